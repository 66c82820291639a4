import { describe, expect, test } from 'vitest';
import { toLonLat } from '../../src/geo/frame.ts';
import { computeLight } from '../../src/light/compute-light.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import type { Grid, GridSpec } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { lightScene } from '../../src/scene/build-scene.ts';
import { siteFrame } from '../../src/scene/site-ground.ts';
import { addFeatures, type Drawn } from '../../src/site/actions/add-feature.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { newSite } from '../../src/site/new-site.ts';
import { gridOf } from '../reference/plain-horizon.ts';
import { referenceCell } from '../reference/reference-light.ts';
import { plainYear } from '../reference/reference-sun.ts';
import { seededScene } from '../reference/seeded-scene.ts';

/** A wood north and east of the cells, its sides aslant the raster. */
const WOOD: [number, number][] = [
  [-28, 37],
  [71, 20],
  [95, 70],
  [-10, 90],
];
const TOP_M = 18;
const inWood = (xM: number, yM: number): boolean =>
  WOOD.every(([ax, ay], k) => {
    const [bx, by] = WOOD[(k + 1) % WOOD.length];
    return (bx - ax) * (yM - ay) - (by - ay) * (xM - ax) > 0;
  });
const elevationM = (xM: number, yM: number) => 90 + 0.06 * xM + 0.04 * yM;
const GROUND = gridOf(80, 80, 10, elevationM);
/** Cells of a field: the wood begins 4 m from them. */
const CELLS: GridSpec = { columns: 24, rows: 12, cellM: 2, westM: -14, northM: 22 };

/** The same wood south of the equator, so that it lies towards the sun. */
const empty = newSite([171.905, -43.605], 'Two woods', 2027);
const frame = siteFrame(empty);

function document(site: Partial<SiteDocument['site']>, block: object | null): SiteDocument {
  const ring = [...WOOD, WOOD[0]].map((xy) => [...toLonLat(frame, xy)]);
  const drawn = block
    ? [
        {
          properties: { kind: 'block', heightM: TOP_M, ...block },
          geometry: { type: 'Polygon', coordinates: [ring] },
        },
      ]
    : [];
  const { document: made } = addFeatures(empty, drawn as unknown as Drawn[]);
  return { ...made, site: { ...made.site, ...site } };
}
function scene(of: SiteDocument, surface: Grid | null): LightScene {
  const options = { year: 0, layout: null, pace: 'usual' as const, frame, ground: GROUND, weather: null };
  return lightScene(of, { ...options, surface }).scene;
}
const light = (of: LightScene) => runToEnd(computeLight({ scene: of, grid: CELLS, readingHeightM: 0.1 }));
const surfaceOf = (cellM: number) =>
  gridOf(400 / cellM, 400 / cellM, cellM, (x, y) => elevationM(x, y) + (inWood(x, y) ? TOP_M : 0));

const shares = (a: Float32Array, b: Float32Array): number[] => Array.from(a, (value, k) => value - b[k]);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const worst = (values: readonly number[]) =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
const cells = CELLS.columns * CELLS.rows;
const band = (values: Float32Array, k: number) => values.subarray(k * cells, (k + 1) * cells);

describe('a wood from a surface raster and the same wood drawn', () => {
  test.each([
    // A block without a species keeps its leaves; with a leafless porosity it loses them by the default calendar.
    ['evergreen', {}],
    ['deciduous', { opticalPorosityLeafOff: 0.7 }],
  ] as const)('%s: take the same light from the cells beside it', (leaves, block) => {
    const drawn = light(scene(document({}, block), null));
    const raster = light(
      scene(document({ surfaceFile: 'tops.tif', surfaceLeaves: leaves }, null), surfaceOf(2)),
    );
    const open = light(scene(document({}, null), null));
    const season = shares(band(raster.lightShare, 12), band(drawn.lightShare, 12));
    const taken = mean(shares(band(open.lightShare, 12), band(drawn.lightShare, 12)));
    const yearOf = (hours: Float32Array) =>
      Float32Array.from({ length: cells }, (_, i) => {
        let sum = 0;
        for (let m = 0; m < 12; m++) sum += hours[m * cells + i];
        return sum;
      });
    const openHours = mean([...yearOf(open.directHours)]);
    const hours = shares(yearOf(raster.directHours), yearOf(drawn.directHours)).map((h) => h / openHours);
    console.log(
      `${leaves}: the wood takes ${(100 * taken).toFixed(0)} % of the season's light; raster less drawn, mean ${(100 * mean(season)).toFixed(2)} %, worst cell ${(100 * worst(season)).toFixed(2)} %; year's hours mean ${(100 * mean(hours)).toFixed(2)} %, worst ${(100 * worst(hours)).toFixed(2)} %`,
    );
    expect(taken).toBeGreaterThan(0.05);
    // The raster's edge is a stair of 2 m about the drawn line, and ground under a cell is level: half a cell either way.
    expect(Math.abs(mean(season))).toBeLessThan(0.005);
    expect(worst(season)).toBeLessThan(0.02);
    expect(Math.abs(mean(hours))).toBeLessThan(0.005);
    expect(worst(hours)).toBeLessThan(0.03);
  });

  test('deciduous woods let more through in winter than evergreen ones, and the same in full leaf', () => {
    const of = (surfaceLeaves: 'deciduous' | 'mixed' | 'evergreen') =>
      light(scene(document({ surfaceFile: 'tops.tif', surfaceLeaves }, null), surfaceOf(2)));
    const [deciduous, mixed, evergreen] = [of('deciduous'), of('mixed'), of('evergreen')];
    const inMonth = ({ directHours }: typeof mixed, m: number) => mean([...band(directHours, m)]);
    // July is winter there, January full leaf.
    expect(inMonth(deciduous, 6)).toBeGreaterThan(1.05 * inMonth(mixed, 6));
    expect(inMonth(mixed, 6)).toBeGreaterThan(1.02 * inMonth(evergreen, 6));
    expect(Math.abs(inMonth(deciduous, 0) - inMonth(evergreen, 0))).toBeLessThan(
      0.005 * inMonth(evergreen, 0),
    );
  });
});

test.each([1, 2])(
  'seeded scene %d among ragged woods: the engine agrees with every ten minutes and step',
  (seed) => {
    const random = seededRandom(seed);
    const base = seededScene(seed);
    const { grid } = base;
    const woods = (x: number, y: number) => {
      const outsideM = Math.max(-x, x - 40, -y, y - 40);
      return outsideM > 4 && Math.sin(x / 17 + seed) + Math.cos(y / 13) > 0 ? 4 + 12 * random() : 0;
    };
    const canopy = { ...gridOf(80, 80, 2, (x, y) => woods(x + 20, y + 20)), westM: -60, northM: 100 };
    const surroundings = { canopy, depthOnPerM: 0.25, depthOffPerM: 0.0875, leafClass: 1 };
    const request = { ...base, scene: { ...base.scene, surroundings } };
    const result = runToEnd(computeLight(request));
    const without = runToEnd(computeLight(base));
    const year = plainYear(request.scene);
    const sums = { error: 0, worst: 0, worstShare: 0, taken: 0, count: 0 };
    while (sums.count < 10) {
      const cell = Math.floor(random() * grid.columns * grid.rows);
      if (Number.isNaN(result.lightShare[cell])) continue;
      const x = grid.westM + ((cell % grid.columns) + 0.5) * grid.cellM;
      const y = grid.northM - (Math.floor(cell / grid.columns) + 0.5) * grid.cellM;
      const plain = referenceCell(request.scene, year, x, y, request.readingHeightM);
      let [difference, taken, openHours] = [0, 0, 0];
      for (let month = 0; month < 12; month++) {
        const at = month * grid.columns * grid.rows + cell;
        difference += result.directHours[at] - plain.directHours[month];
        taken += without.directHours[at] - result.directHours[at];
        openHours += plain.openHours[month];
      }
      const share = result.lightShare[12 * grid.columns * grid.rows + cell] - plain.lightShare[12];
      sums.error += Math.abs(difference) / openHours;
      sums.worst = Math.max(sums.worst, Math.abs(difference) / openHours);
      sums.worstShare = Math.max(sums.worstShare, Math.abs(share));
      sums.taken += taken / openHours;
      sums.count++;
    }
    const percent = (value: number) => (100 * value).toFixed(2);
    console.log(
      `woods take ${percent(sums.taken / sums.count)} % of open hours; errors mean ${percent(sums.error / sums.count)} %, worst ${percent(sums.worst)} %, season's share of light worst ${percent(sums.worstShare)} %`,
    );
    expect(sums.taken / sums.count).toBeGreaterThan(0.05);
    // What physics.md grants the engine without woods.
    expect(sums.error / sums.count).toBeLessThan(0.005);
    expect(sums.worst).toBeLessThan(0.01);
    expect(sums.worstShare).toBeLessThan(0.01);
  },
);
