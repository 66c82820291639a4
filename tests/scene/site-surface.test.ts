import { describe, expect, it } from 'vitest';
import { toLocal } from '../../src/geo/frame.ts';
import { cellCentreX, cellCentreY, type Grid } from '../../src/numeric/grid.ts';
import { lightScene } from '../../src/scene/build-scene.ts';
import type { SceneOptions } from '../../src/scene/options.ts';
import { siteFrame } from '../../src/scene/site-ground.ts';
import { surfaceFacts, surfaceProblem } from '../../src/scene/surface-facts.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { gridOf } from '../reference/plain-horizon.ts';

const CENTRE: [number, number] = [-64.505, 45.105];
const at = (eastM: number, northM: number): [number, number] => [
  CENTRE[0] + eastM / 78_700,
  CENTRE[1] + northM / 111_100,
];
const box = (west: number, south: number, east: number, north: number) => [
  [at(west, south), at(east, south), at(east, north), at(west, north), at(west, south)],
];
const feature = (id: string, type: string, coordinates: unknown, properties: object) => ({
  type: 'Feature',
  id,
  geometry: { type, coordinates },
  properties,
});
const FIELD = feature('f', 'Polygon', box(-20, -20, 20, 20), { kind: 'field', name: 'Lea' });

function site(features: unknown[], more: object = {}): SiteDocument {
  return {
    type: 'FeatureCollection',
    site: {
      formatVersion: 1,
      name: 'Test',
      timeZone: 'America/Halifax',
      baseYear: 2027,
      terrainFile: 'ground.tif',
      surfaceFile: 'tops.tif',
      ...more,
    },
    features: [FIELD, ...features] as SiteFeature[],
  };
}

const GROUND = gridOf(60, 60, 10, (x, y) => 80 + 0.05 * x - 0.02 * y);
const surfaceOf = (heightM: (x: number, y: number) => number): Grid =>
  gridOf(200, 200, 2, (x, y) => 80 + 0.05 * x - 0.02 * y + heightM(x, y));
/** A wood of 12 m over all the land. */
const WOODS = surfaceOf(() => 12);

function build(document: SiteDocument, surface: Grid | null = WOODS, more: Partial<SceneOptions> = {}) {
  const frame = siteFrame(document);
  const options = { year: 0, layout: null, pace: 'usual' as const, frame, ground: GROUND, weather: null };
  return lightScene(document, { ...options, surface, ...more });
}
function canopyAt(document: SiteDocument, eastM: number, northM: number, more: Partial<SceneOptions> = {}) {
  const canopy = build(document, WOODS, more).scene.surroundings?.canopy;
  if (!canopy) throw new Error('no woods');
  const [x, y] = toLocal(siteFrame(document), at(eastM, northM));
  const column = Math.floor((x - canopy.westM) / canopy.cellM);
  const row = Math.floor((canopy.northM - y) / canopy.cellM);
  return canopy.values[row * canopy.columns + column];
}

describe('the woods of a surface raster', () => {
  it('are what stands more than a metre above the terrain; holes are none', () => {
    const surface = surfaceOf((x) => (x < -100 ? 0.9 : x < 100 ? 1.5 : x < 150 ? 20 : Number.NaN));
    const document = site([]);
    const canopy = build(document, surface).scene.surroundings?.canopy;
    canopy?.values.forEach((heightM, cell) => {
      const x = cellCentreX(canopy, cell % canopy.columns);
      const y = cellCentreY(canopy, Math.floor(cell / canopy.columns));
      if (Math.abs(x) < 60 && Math.abs(y) < 60) return;
      const expected = x < -100 || x > 150 ? 0 : x < 100 ? 1.5 : 20;
      expect(Math.abs(heightM - expected)).toBeLessThan(1e-3);
    });
    const bare = build(
      document,
      surfaceOf(() => 0.5),
    );
    expect(bare.scene.surroundings).toBeNull();
    expect(bare.assumed).toContain('tops.tif shows no woods beside what is drawn.');
    expect(build(document, null).scene.surroundings).toBeNull();
  });

  it('end three metres from the field, and from all fields while none is taken', () => {
    const other = feature('g', 'Polygon', box(60, -20, 100, 20), { kind: 'field', name: 'Low' });
    const offered = site([other]);
    for (const eastM of [0, 18, 22, 80]) expect(canopyAt(offered, eastM, 0)).toBe(0);
    for (const eastM of [25.5, 40]) expect(canopyAt(offered, eastM, 0)).toBeCloseTo(12, 3);
    const taken = site([other]);
    const [field] = taken.features;
    const chosen = {
      ...taken,
      features: [{ ...field, properties: { ...field.properties, taken: true } }, other],
    };
    expect(canopyAt(chosen as SiteDocument, 80, 0)).toBeCloseTo(12, 3);
  });

  it('are not counted under and near what is drawn, standing or felled', () => {
    const line = (north: number) => [at(40, north), at(90, north)];
    const document = site([
      feature('oak', 'Point', at(60, 60), { kind: 'tree', heightM: 15, crownRadiusM: 6 }),
      feature('gone', 'Point', at(90, 60), { kind: 'tree', heightM: 15, crownRadiusM: 6, removedYear: 2020 }),
      feature('belt', 'LineString', line(0), { kind: 'belt', heightM: 8, widthM: 6 }),
      feature('wall', 'LineString', line(-40), { kind: 'wall', heightM: 2 }),
      feature('wood', 'Polygon', box(40, -90, 90, -70), { kind: 'block', heightM: 14 }),
      feature('barn', 'Polygon', box(-80, 60, -60, 70), { kind: 'building', heightM: 6 }),
      feature('other', 'Point', at(-60, -60), { kind: 'tree', heightM: 9, crownRadiusM: 4, layout: 'B' }),
    ]);
    const gone = [
      [60, 60],
      [67, 60],
      [90, 60],
      [60, 0],
      [60, 4.5],
      [60, -40],
      [60, -80],
      [60, -92],
      [-70, 65],
    ];
    for (const [eastM, northM] of gone) expect(canopyAt(document, eastM, northM)).toBe(0);
    const there = [
      [72, 60],
      [96, 60],
      [60, 9],
      [60, -46],
      [60, -96],
      [-70, 80],
      [-60, -60],
    ];
    for (const [eastM, northM] of there) expect(canopyAt(document, eastM, northM)).toBeCloseTo(12, 3);
    expect(canopyAt(document, -60, -60, { layout: 'B' })).toBe(0);
  });

  it('make room for a crown as it grows', () => {
    const document = site([
      feature('w', 'Point', at(60, 60), { kind: 'tree', species: 'Juglans regia', heightM: 3 }),
    ]);
    expect(canopyAt(document, 66, 60)).toBeCloseTo(12, 3);
    expect(canopyAt(document, 66, 60, { year: 40 })).toBe(0);
  });

  it('are the very same grid while what is drawn takes the same cells', () => {
    const treeAt = (eastM: number) =>
      site([feature('t', 'Point', at(eastM, 0), { kind: 'tree', heightM: 5, crownRadiusM: 2 })]);
    const canopyOf = (document: SiteDocument) => build(document).scene.surroundings?.canopy;
    const first = canopyOf(treeAt(0));
    // The field is the same feature in all three: a tree moved inside it takes no cell away.
    expect(canopyOf(treeAt(5))).toBe(first);
    expect(canopyOf(treeAt(60))).not.toBe(first);
  });

  it('are leafless in winter unless the site says otherwise', () => {
    const woods = (more: object, options: Partial<SceneOptions> = {}) => {
      const { scene, assumed } = build(site([], more), WOODS, options);
      if (!scene.surroundings) throw new Error('no woods');
      return { ...scene.surroundings, leaf: scene.leaf, assumed: assumed.join(' ') };
    };
    const silent = woods({});
    expect(silent.depthOnPerM).toBeCloseTo(0.25, 9);
    expect(silent.depthOffPerM).toBeCloseTo(0.0875, 9);
    expect(silent.leafClass).toBe(1);
    expect(silent.assumed).toMatch(
      /tops\.tif.*keep their height.*tops\.tif lose their leaves.*surfaceLeaves/,
    );
    const winter = silent.leaf.phaseOfDay[20] * silent.leaf.classCount;
    const summer = silent.leaf.phaseOfDay[200] * silent.leaf.classCount;
    expect(silent.leaf.leafShare[winter + 1]).toBe(0);
    expect(silent.leaf.leafShare[summer + 1]).toBe(1);
    const evergreen = woods({ surfaceLeaves: 'evergreen' });
    expect([evergreen.depthOffPerM, evergreen.leafClass]).toEqual([evergreen.depthOnPerM, 0]);
    expect(evergreen.assumed).not.toMatch(/lose their leaves/);
    expect(woods({ surfaceLeaves: 'mixed' }).depthOffPerM).toBeCloseTo(0.25 * 0.675, 9);
    expect(woods({}, { foliage: 'dense' }).depthOnPerM).toBeGreaterThan(0.25);
  });
});

describe('a surface raster beside the terrain', () => {
  it('says how much of the land it covers, how much is wooded, and how it lies', () => {
    const surface = surfaceOf((x) => (x < 0 ? 0.1 : x < 100 ? 18 : Number.NaN));
    const facts = surfaceFacts(surface, GROUND);
    expect(Math.abs(facts.eastM - 300)).toBeLessThan(4);
    expect(Math.abs(facts.northM - 400)).toBeLessThan(4);
    expect(facts.woodedShare).toBeCloseTo(1 / 3, 2);
    expect(facts.tallestM).toBeCloseTo(18, 3);
    expect(facts.lowestM).toBeCloseTo(0.1, 3);
    expect(surfaceProblem(surface, GROUND, 'tops.tif', 'ground.tif')).toBeNull();
  });

  it('is refused where it holds heights, and doubted where it never comes down', () => {
    const heights = gridOf(200, 200, 2, (x) => (x > 0 ? 15 : 0));
    expect(() => surfaceProblem(heights, GROUND, 'tops.tif', 'ground.tif')).toThrow(
      /^tops\.tif: most of the surface lies \d+\.\d m or more below the terrain of ground\.tif; expected elevations/,
    );
    expect(
      surfaceProblem(
        surfaceOf(() => 4),
        GROUND,
        'tops.tif',
        'ground.tif',
      ),
    ).toMatch(/^tops\.tif lies 4\.0 m above the terrain of ground\.tif even where it is lowest/);
  });
});
