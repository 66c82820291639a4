import { describe, expect, test } from 'vitest';
import { type ColdAir, coldAirScene, computeColdAir } from '../../src/choose/cold-air.ts';
import { coldFigures } from '../../src/choose/cold-figures.ts';
import { toLocal } from '../../src/geo/frame.ts';
import { cellCentreX, cellCentreY, cellCount, type Grid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { at, northWind, optionsOf } from '../years/years-site.ts';

const HALF_M = 150;

/** A valley that falls 1 in 20 to the south, its sides 1 in 5. */
const valley = (xM: number, yM: number): number => 50 + 0.05 * yM + 0.2 * Math.abs(xM);

/** Ground about the site's middle on cells of 4 m. */
function groundOf(document: SiteDocument, elevation = valley): Grid {
  const [cx, cy] = toLocal(optionsOf(document).frame, at(0, 0));
  const cells = Math.ceil((2 * HALF_M) / 4);
  const spec = { columns: cells, rows: cells, cellM: 4, westM: cx - HALF_M, northM: cy + HALF_M };
  const values = Float32Array.from({ length: cellCount(spec) }, (_, cell) =>
    elevation(cellCentreX(spec, cell % cells) - cx, cellCentreY(spec, Math.floor(cell / cells)) - cy),
  );
  return { ...spec, values };
}

function belt(id: string, places: readonly (readonly [number, number])[], more: object = {}): SiteFeature {
  const coordinates = places.map(([x, y]) => at(x, y));
  const properties = { kind: 'belt', status: 'existing', heightM: 8, widthM: 3, ...more };
  return {
    type: 'Feature',
    id,
    geometry: { type: 'LineString', coordinates },
    properties,
  } as unknown as SiteFeature;
}

function coldOf(features: readonly SiteFeature[], elevation = valley): ColdAir {
  const document = northWind([
    belt(
      'far',
      [
        [0, 9000],
        [10, 9000],
      ],
      { removedYear: 2000 },
    ),
    ...features,
  ]);
  // The frame hangs on all that is drawn: the same thing far away keeps it in place.
  const options = { ...optionsOf(document), ground: groundOf(document, elevation) };
  return runToEnd(computeColdAir(coldAirScene(document, options)));
}
const deepest = (air: ColdAir): number => air.dammedDepthM.reduce((a, b) => Math.max(a, b || 0), 0);
/** Greatest difference from what a level surface 2 m above the valley's bottom at the belt holds, north of the belt. */
function offFromLevel({ grid, dammedDepthM }: ColdAir): number {
  let most = 0;
  for (let cell = 0; cell < dammedDepthM.length; cell++) {
    const x = cellCentreX(grid, cell % grid.columns) - grid.westM - HALF_M;
    const y = cellCentreY(grid, Math.floor(cell / grid.columns)) - grid.northM + HALF_M;
    if (y < 8 || y > 100) continue;
    most = Math.max(most, Math.abs(dammedDepthM[cell] - Math.max(0, 2 - 0.05 * y - 0.2 * Math.abs(x))));
  }
  return most;
}
const across = (more: object = {}) =>
  belt(
    'across',
    [
      [-140, 0],
      [140, 0],
    ],
    more,
  );

describe('a belt across a valley', () => {
  test('holds cold air as deep as it is taken to lie; the open valley holds none', () => {
    expect(deepest(coldOf([]))).toBe(0);
    const dammed = coldOf([across()]);
    // 2 m at the belt less the fall of a cell or two to the cell before it.
    expect(deepest(dammed)).toBeGreaterThan(1.4);
    expect(deepest(dammed)).toBeLessThanOrEqual(2);
    // Half a cell of the valley's sides, and one of its fall.
    expect(offFromLevel(dammed)).toBeLessThan(0.65);
    // The land itself has no hollow.
    expect(dammed.depthM.every((depth) => depth === 0)).toBe(true);
  });

  test.each([
    ['a raised foot', across({ baseHeightM: 1 })],
    ['thin growth', across({ opticalPorosityLeafOn: 0.7 })],
  ])('lets it out by %s', (_, thing) => {
    expect(deepest(coldOf([thing]))).toBe(0);
  });

  test('lets it out by a gap in the bottom of the valley, and not by one as wide on the slope above', () => {
    const gap = (from: number, to: number) =>
      coldOf([
        belt('one', [
          [-140, 0],
          [from, 0],
        ]),
        belt('other', [
          [to, 0],
          [140, 0],
        ]),
      ]);
    expect(deepest(gap(-6, 6))).toBe(0);
    expect(gap(40, 52).dammedDepthM).toEqual(coldOf([across()]).dammedDepthM);
  });

  test('leaks nowhere at a slant, however thin it is', () => {
    for (const slant of [20, 45, 70, 100]) {
      const thing = belt(
        'slant',
        [
          [-140, -slant],
          [140, slant],
        ],
        { widthM: 0.5 },
      );
      expect(deepest(coldOf([thing])), `${slant}`).toBeGreaterThan(1.4);
    }
  });

  test('low things hold back no more than they are high', () => {
    const low = deepest(coldOf([across({ heightM: 0.8 })]));
    expect(low).toBeGreaterThan(0.3);
    expect(low).toBeLessThanOrEqual(0.8);
  });
});

test('on an even slope a belt dams nothing, down it or along it: the air goes on beside it, or round its ends', () => {
  const slope = (_: number, y: number) => 50 + 0.1 * y;
  expect(
    deepest(
      coldOf(
        [
          belt('down', [
            [20, -140],
            [20, 140],
          ]),
        ],
        slope,
      ),
    ),
  ).toBe(0);
  expect(
    deepest(
      coldOf(
        [
          belt('along', [
            [-60, 0],
            [60, 0],
          ]),
        ],
        slope,
      ),
    ),
  ).toBeLessThan(0.1);
});

test('a hollow of the land holds its depth, whatever stands', () => {
  const bowl = (x: number, y: number) => Math.min(50, 47 + 3 * ((x * x + y * y) / 3600));
  const { depthM } = coldOf([across()], bowl);
  expect(Math.max(...depthM)).toBeCloseTo(3, 1);
});

/** Ground mirrored west to east, with what stands on it. */
test('mirrored land holds the same', () => {
  const random = seededRandom(5);
  const [columns, rows] = [40, 30];
  const values = Float32Array.from({ length: columns * rows }, () => 10 * random());
  const mirror = (from: Float32Array) =>
    from.map((_, cell) => from[Math.floor(cell / columns) * columns + columns - 1 - (cell % columns)]);
  const grid = { columns, rows, cellM: 4, westM: 0, northM: 0 };
  const run = (ground: Grid, axis: [number, number][]) =>
    runToEnd(computeColdAir({ ground, dams: [{ areas: [], axis, heightM: 2 }] }));
  const one = run({ ...grid, values }, [
    [2, -10],
    [90, -110],
  ]);
  const other = run({ ...grid, values: mirror(values) }, [
    [158, -10],
    [70, -110],
  ]);
  expect(other.depthM).toEqual(mirror(one.depthM));
});

test('figures of a field: depths, shares, and the air that comes through, each ground counted once', () => {
  const document = northWind([]);
  const ground = groundOf(document);
  const air = runToEnd(computeColdAir({ ground, dams: [] }));
  const [cx, cy] = [ground.westM + HALF_M, ground.northM - HALF_M];
  const box = (west: number, south: number, east: number, north: number): [number, number][] => [
    [cx + west, cy + south],
    [cx + east, cy + south],
    [cx + east, cy + north],
    [cx + west, cy + north],
  ];
  // Across the whole valley, its middle third: all that lies north of it comes through.
  const figures = coldFigures(air, [box(-HALF_M, -50, HALF_M, 50)]);
  expect(figures).toMatchObject({ meanDepthM: 0, heldDepthM: 0, hollowShare: 0, deepestM: 0 });
  expect(figures.drainsThroughM2).toBeLessThan(100 * 2 * HALF_M);
  expect(figures.drainsThroughM2).toBeGreaterThan(0.5 * 100 * 2 * HALF_M);
  // At the top nothing comes from above.
  expect(coldFigures(air, [box(-HALF_M, 100, HALF_M, HALF_M + 10)]).drainsThroughM2).toBe(0);
});

test('fine ground is taken by its means, coarse ground with cells that have room for a belt', () => {
  const flat = (cells: number, cellM: number): Grid => ({
    columns: cells,
    rows: cells,
    cellM,
    westM: 0,
    northM: 0,
    values: new Float32Array(cells * cells).fill(7),
  });
  const sizes = ([cells, cellM]: [number, number]) => {
    const { grid, elevationM } = runToEnd(computeColdAir({ ground: flat(cells, cellM), dams: [] }));
    expect(elevationM.every((z) => z === 7)).toBe(true);
    return [grid.cellM, grid.columns];
  };
  expect(sizes([101, 0.5])).toEqual([2, 26]);
  expect(sizes([50, 3])).toEqual([3, 50]);
  expect(sizes([20, 30])).toEqual([3.75, 160]);
});
