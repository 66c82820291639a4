import { describe, expect, it } from 'vitest';
import type { LonLat } from '../../src/geo/frame.ts';
import { cornersOf, withCornerAfter, withCornerAt, withoutCorner } from '../../src/map/drawing/corners.ts';
import { pickAt } from '../../src/map/drawing/pick.ts';
import { footprintGeometry } from '../../src/map/footprint.ts';
import { northernSide, placeInside } from '../../src/map/label-places.ts';
import { planFeatures, selectedFeatures } from '../../src/map/plan-features.ts';
import { cardPlace } from '../../src/map/read-out-place.ts';
import { siteBounds } from '../../src/map/site-bounds.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { newSite } from '../../src/site/new-site.ts';
import { placeBeside } from '../../src/site/places.ts';
import type { AppState } from '../../src/state/model.ts';

const ORIGIN: LonLat = [10, 50];
/** A place so many metres east and north of the origin. */
const at = (eastM: number, northM: number): [number, number] => {
  const [lon, lat] = placeBeside(ORIGIN, eastM, northM);
  return [lon, lat];
};
const square = (west: number, south: number, sideM: number) => [
  at(west, south),
  at(west + sideM, south),
  at(west + sideM, south + sideM),
  at(west, south + sideM),
  at(west, south),
];
const feature = (id: string, geometry: unknown, properties: Record<string, unknown>): SiteFeature =>
  ({ type: 'Feature', id, geometry, properties }) as unknown as SiteFeature;
const area = (id: string, ring: number[][], properties: Record<string, unknown>) =>
  feature(id, { type: 'Polygon', coordinates: [ring] }, properties);

const circle = (eastM: number, northM: number, radiusM: number): LonLat[] =>
  Array.from({ length: 24 }, (_, i) => {
    const turn = (i * 2 * Math.PI) / 24;
    return at(eastM + radiusM * Math.cos(turn), northM + radiusM * Math.sin(turn));
  });

const document: SiteDocument = {
  ...newSite(ORIGIN, 'Trial', 2026),
  features: [
    area('field', square(0, 0, 100), { kind: 'field', name: 'Long Acre', taken: true }),
    area('patch', square(20, 20, 20), { kind: 'patch', name: 'Herbs' }),
    feature(
      'tree',
      { type: 'Point', coordinates: at(30, 30) },
      { kind: 'tree', tag: 'N1', status: 'planned' },
    ),
    feature('later', { type: 'Point', coordinates: at(60, 60) }, { kind: 'tree', tag: 'F2' }),
    feature(
      'belt',
      { type: 'LineString', coordinates: [at(0, 100), at(100, 100)] },
      { kind: 'belt', status: 'existing' },
    ),
    feature('other', { type: 'Point', coordinates: at(80, 20) }, { kind: 'tree', tag: 'A3', layout: 'B' }),
  ],
};
const state = {
  document,
  layout: null,
  selection: null,
  grown: {
    year: 20,
    things: [
      {
        id: 'tree',
        kind: 'tree',
        label: 'Walnut N1',
        heightM: 10,
        heightBandM: [8, 12],
        baseM: 2,
        radiusM: 4,
        radiusBandM: [3, 5],
        footprint: [circle(30, 30, 4)],
      },
      {
        id: 'belt',
        kind: 'belt',
        label: 'Spruce belt',
        heightM: 12,
        heightBandM: [12, 12],
        baseM: 0,
        radiusM: 0,
        radiusBandM: [0, 0],
        footprint: [[at(0, 97), at(100, 97), at(100, 103), at(0, 103)]],
      },
    ],
  },
} satisfies Pick<AppState, 'document' | 'layout' | 'selection' | 'grown'>;

describe('a footprint as GeoJSON', () => {
  it('closes its rings and turns them as the standard asks', () => {
    const clockwise = [...circle(0, 0, 5)].reverse();
    const geometry = footprintGeometry([clockwise])!;
    const [ring] = geometry.coordinates[0];
    expect(ring[0]).toEqual(ring[ring.length - 1]);
    expect(ring).toHaveLength(25);
    const twiceArea = ring
      .slice(1)
      .reduce((sum, [x, y], i) => sum + (ring[i][0] - 10) * (y - 50) - (x - 10) * (ring[i][1] - 50), 0);
    expect(twiceArea).toBeGreaterThan(0);
  });

  it('keeps separate pieces apart and takes a ring inside another as a hole', () => {
    const geometry = footprintGeometry([circle(0, 0, 5), circle(0, 0, 20), circle(80, 0, 5)])!;
    expect(geometry.coordinates.map((rings) => rings.length).sort()).toEqual([1, 2]);
  });

  it('is nothing without a ring that encloses ground', () => {
    expect(footprintGeometry([])).toBeNull();
    expect(footprintGeometry([[at(0, 0), at(1, 0)]])).toBeNull();
  });
});

describe('the plan', () => {
  const plan = planFeatures(state);

  it('draws a crown at its spread, marked for what the tree is for', () => {
    expect(plan.crowns.features.map(({ properties }) => properties)).toEqual([
      expect.objectContaining({ id: 'tree', mark: 'nut', status: 'planned', radiusM: 4 }),
    ]);
  });

  it('keeps the stem of a tree that does not stand in the chosen year', () => {
    const later = plan.points.features.find(({ properties }) => properties.id === 'later');
    expect(later?.properties).toMatchObject({ tag: 'F2', standing: false });
  });

  it('leaves out what belongs to another layout', () => {
    const ids = (features: typeof plan.points) => features.features.map(({ properties }) => properties.id);
    expect(ids(plan.points)).toEqual(['tree', 'later']);
    expect(ids(planFeatures({ ...state, layout: 'B' }).points)).toContain('other');
  });

  it('names fields, patches and belts', () => {
    expect(plan.names.features.map(({ properties }) => properties.label)).toEqual([
      'Long Acre',
      'Herbs',
      'Spruce belt',
    ]);
  });

  it('shows what is chosen by its spread', () => {
    const [cover, ...rest] = selectedFeatures({ ...state, selection: 'tree' }).features;
    expect(cover.geometry.type).toBe('MultiPolygon');
    expect(rest).toEqual([]);
    expect(selectedFeatures({ ...state, selection: 'gone' }).features).toEqual([]);
  });
});

describe('pressing on the map', () => {
  it('means trees before patches before fields', () => {
    expect(pickAt(state, at(30.5, 30), 1)).toBe('tree');
    expect(pickAt(state, at(33, 30), 1)).toBe('tree');
    expect(pickAt(state, at(37, 30), 1)).toBe('patch');
    expect(pickAt(state, at(70, 30), 1)).toBe('field');
    expect(pickAt(state, at(-40, 30), 1)).toBeNull();
  });

  it('finds a belt anywhere on the ground it covers, and a line within reach', () => {
    expect(pickAt(state, at(50, 102), 0.5)).toBe('belt');
    expect(pickAt(state, at(50, 105), 0.5)).toBeNull();
    expect(pickAt(state, at(50, 105), 6)).toBe('belt');
  });

  it('does not find what another layout holds', () => {
    expect(pickAt(state, at(80, 20), 1)).toBe('field');
    expect(pickAt({ ...state, layout: 'B' }, at(80, 20), 1)).toBe('other');
  });
});

describe('corners of a shape', () => {
  const line = {
    type: 'LineString',
    coordinates: [
      [0, 0, 7],
      [2, 0],
      [2, 2],
    ],
  } as SiteFeature['geometry'];
  const ring = {
    type: 'Polygon',
    coordinates: [
      [
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 0],
      ],
    ],
  } as SiteFeature['geometry'];

  it('move one by one, keeping the height of a position and the ring closed', () => {
    expect(withCornerAt(line, 0, [1, 1])).toMatchObject({
      coordinates: [
        [1, 1, 7],
        [2, 0],
        [2, 2],
      ],
    });
    expect(withCornerAt(ring, 0, [1, 1])).toMatchObject({
      coordinates: [
        [
          [1, 1],
          [2, 0],
          [2, 2],
          [1, 1],
        ],
      ],
    });
  });

  it('can be added halfway along a side, the closing side of an area too', () => {
    expect(cornersOf(withCornerAfter(ring, 2)!)).toEqual([
      [0, 0],
      [2, 0],
      [2, 2],
      [1, 1],
    ]);
    expect(withCornerAfter(line, 2)).toBeNull();
  });

  it('can be taken away as long as a shape is left', () => {
    expect(cornersOf(withoutCorner(line, 1)!)).toEqual([
      [0, 0],
      [2, 2],
    ]);
    expect(withoutCorner(ring, 1)).toBeNull();
  });
});

describe('places on the sheet', () => {
  it('writes a name inside an area even where its centre is outside', () => {
    const horseshoe = [
      [0, 0],
      [9, 0],
      [9, 9],
      [6, 9],
      [6, 3],
      [3, 3],
      [3, 9],
      [0, 9],
      [0, 0],
    ];
    const [lon, lat] = placeInside(horseshoe);
    expect(lat).toBeGreaterThan(0);
    expect((lon > 0 && lon < 3) || (lon > 6 && lon < 9) || lat < 3).toBe(true);
    expect(
      placeInside([
        [0, 0],
        [4, 0],
        [4, 2],
        [0, 2],
        [0, 0],
      ]),
    ).toEqual([2, 1]);
  });

  it('writes a field’s name along its northern side', () => {
    const { at: middle, turnDeg } = northernSide(square(0, 0, 100));
    expect(middle[1]).toBeCloseTo(at(50, 100)[1], 7);
    expect(turnDeg).toBeCloseTo(0, 1);
  });

  it('never lays the read-out over the place it describes', () => {
    for (const x of [0, 200, 700, 1000])
      for (const y of [0, 200, 700, 800]) {
        const place = cardPlace({ x, y, widthPx: 1000, heightPx: 800 });
        const clearAcross = place.left !== undefined ? place.left > x : place.right! > 1000 - x;
        const clearDown = place.top !== undefined ? place.top > y : place.bottom! > 800 - y;
        expect(clearAcross && clearDown).toBe(true);
      }
  });

  it('shows a garden’s worth of ground around an empty site', () => {
    const empty = newSite(ORIGIN, 'Empty', 2026);
    const [[west, south], [east, north]] = siteBounds({
      document: empty,
      centre: ORIGIN,
    });
    expect((west + east) / 2).toBeCloseTo(10, 6);
    expect(south).toBeLessThan(50);
    expect(north - south).toBeGreaterThan(0.001);
  });
});
