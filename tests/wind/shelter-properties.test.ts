import { describe, expect, it } from 'vitest';
import type { Barrier } from '../../src/crowns/barrier.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { ALL_GUESSES, area, line, request, sector, seededBarriers } from './shelter-scenes.ts';

const compute = (scene: ReturnType<typeof request>) => runToEnd(computeShelter(scene));
const SEEDS = [21, 22, 23, 24, 25, 26];
const winds = [sector(200, 0.4, 5), sector(290, 0.3, 4), sector(45, 0.2, 6)];
const grid = { columns: 60, rows: 60, cellM: 4, westM: -120, northM: 120 };

/** Points that lie inside no building of any seeded scene by luck of the seed are compared; others are NaN on both sides. */
function points(seed: number): [number, number][] {
  const random = seededRandom(seed * 7 + 1);
  return Array.from({ length: 40 }, () => [(random() - 0.5) * 240, (random() - 0.5) * 240]);
}
const moved = (
  barriers: readonly Barrier[],
  move: (x: number, y: number) => readonly [number, number],
  scale = 1,
): Barrier[] =>
  barriers.map((barrier) => ({
    ...barrier,
    xyM: Float64Array.from(
      Array.from(barrier.heightM, (_, i) => move(barrier.xyM[2 * i], barrier.xyM[2 * i + 1])).flat(),
    ),
    heightM: barrier.heightM.map((heightM) => heightM * scale),
    widthM: barrier.widthM * scale,
    baseM: barrier.baseM * scale,
  }));
const shares = (
  barriers: readonly Barrier[],
  places: readonly (readonly [number, number])[],
  more: Parameters<typeof request>[1],
): number[] =>
  places.map(([x, y]) => {
    const one = { columns: 1, rows: 1, cellM: 0.5, westM: x - 0.25, northM: y + 0.25 };
    return compute(request(barriers, { ...more, grid: one })).windShare[0];
  });
const differing = (a: Float32Array, b: Float32Array): number =>
  a.reduce((count, value, i) => count + Number(!Object.is(value, b[i])), Math.abs(a.length - b.length));
const expectAlike = (a: readonly number[], b: readonly number[]) => {
  a.forEach((value, i) => {
    if (Number.isNaN(value)) expect(Number.isNaN(b[i])).toBe(true);
    else expect(Math.abs(value - b[i])).toBeLessThan(2e-5);
  });
};

describe('shelter does not care', () => {
  it.each(SEEDS)('about turning the scene and the wind together (seed %i)', (seed) => {
    const angle = 0.3 + seed;
    const turn = (x: number, y: number) =>
      [x * Math.cos(angle) + y * Math.sin(angle), -x * Math.sin(angle) + y * Math.cos(angle)] as const;
    const barriers = seededBarriers(seed);
    const places = points(seed);
    const turned = winds.map((wind) => ({ ...wind, fromDeg: wind.fromDeg + (angle * 180) / Math.PI }));
    expectAlike(
      shares(barriers, places, { growing: winds }),
      shares(
        moved(barriers, turn),
        places.map(([x, y]) => turn(x, y)),
        { growing: turned },
      ),
    );
  });
  it.each(SEEDS)('about scaling every length with the reading height (seed %i)', (seed) => {
    const barriers = seededBarriers(seed);
    const places = points(seed);
    const bigger = (x: number, y: number) => [3 * x, 3 * y] as const;
    expectAlike(
      shares(barriers, places, { growing: winds }),
      shares(
        moved(barriers, bigger, 3),
        places.map(([x, y]) => bigger(x, y)),
        { growing: winds, readingHeightM: 4.5 },
      ),
    );
  });
  it.each(SEEDS)('about a mirror (seed %i)', (seed) => {
    const mirror = (x: number, y: number) => [-x, y] as const;
    const barriers = seededBarriers(seed);
    const places = points(seed);
    expectAlike(
      shares(barriers, places, { growing: winds }),
      shares(
        moved(barriers, mirror),
        places.map(([x, y]) => mirror(x, y)),
        {
          growing: winds.map((wind) => ({ ...wind, fromDeg: 360 - wind.fromDeg })),
        },
      ),
    );
  });
});

describe('adding and taking away', () => {
  const added = () =>
    line(
      [
        [-60, -30],
        [70, 25],
      ],
      9,
      { thing: 99, widthM: 4, porosityOn: 0.45, porosityOff: 0.45 },
    );
  it.each(SEEDS)('a thing of porosity 1 does nothing (seed %i)', (seed) => {
    const barriers = seededBarriers(seed);
    const air = [
      { ...added(), porosityOn: 1, porosityOff: 1 },
      area(
        [
          [-40, -40],
          [40, -40],
          [0, 60],
        ],
        12,
        { porosityOn: 1, porosityOff: 1 },
      ),
    ];
    const withAir = compute(request([...barriers, ...air], { growing: winds, grid }));
    const without = compute(request(barriers, { growing: winds, grid }));
    expect(differing(withAir.windShare, without.windShare)).toBe(0);
    expect(differing(withAir.galeHours, without.galeHours)).toBe(0);
  });
  it.each(SEEDS)('another belt raises the wind only beside its ends and in gaps (seed %i)', (seed) => {
    const barriers = seededBarriers(seed);
    const options = { ...ALL_GUESSES, endsAndGaps: false };
    const before = compute(request(barriers, { growing: winds, grid, options })).windShare;
    const after = compute(request([...barriers, added()], { growing: winds, grid, options })).windShare;
    before.forEach((share, i) => {
      if (!Number.isNaN(share)) expect(after[i]).toBeLessThanOrEqual(share + 1e-6);
    });
    const withEnds = compute(request([...barriers, added()], { growing: winds, grid })).windShare;
    const withEndsBefore = compute(request(barriers, { growing: winds, grid })).windShare;
    const { xyM, heightM } = added();
    withEnds.forEach((share, i) => {
      if (Number.isNaN(share) || share <= withEndsBefore[i] + 1e-6) return;
      const cell = i % (grid.columns * grid.rows);
      const x = grid.westM + ((cell % grid.columns) + 0.5) * grid.cellM;
      const y = grid.northM - (Math.floor(cell / grid.columns) + 0.5) * grid.cellM;
      const toEnd = Math.min(Math.hypot(x - xyM[0], y - xyM[1]), Math.hypot(x - xyM[2], y - xyM[3]));
      // 2 H aside and 5 H downwind of an end.
      expect(toEnd).toBeLessThan(Math.hypot(2, 5) * heightM[0]);
    });
  });
  it.each(SEEDS)('a belt taken away is as if it had never been there (seed %i)', (seed) => {
    const barriers = seededBarriers(seed);
    const never = compute(request(barriers, { growing: winds, grid }));
    compute(request([...barriers, added()], { growing: winds, grid }));
    const taken = compute(
      request(
        [...barriers, added()].filter(({ thing }) => thing !== 99),
        { growing: winds, grid },
      ),
    );
    expect(differing(taken.windShare, never.windShare)).toBe(0);
    expect(differing(taken.galeHours, never.galeHours)).toBe(0);
  });
  it.each(SEEDS)('shares stay above nothing and below 1.2 (seed %i)', (seed) => {
    const { windShare } = compute(request(seededBarriers(seed), { growing: winds, grid }));
    for (const share of windShare) if (!Number.isNaN(share)) expect(share > 0 && share <= 1.2).toBe(true);
  });
});

describe('rows asked for alone', () => {
  it.each([
    { columns: 90, rows: 80, cellM: 0.3, westM: -12.9, northM: 11.7 },
    { columns: 600, rows: 500, cellM: 0.5, westM: -150, northM: 125 },
  ])('come out exactly as in the whole', (whole) => {
    const more = { growing: winds, rest: [sector(180, 1, 6)] };
    const all = compute(request(seededBarriers(3), { ...more, grid: whole }));
    const cells = whole.columns * whole.rows;
    for (const [top, rows] of [
      [0, 33],
      [33, 1],
      [34, whole.rows - 34],
    ]) {
      const band = { ...whole, rows, northM: whole.northM - top * whole.cellM };
      const part = compute(request(seededBarriers(3), { ...more, grid: band }));
      for (let layer = 0; layer < 3; layer++) {
        const from = layer * cells + top * whole.columns;
        const length = rows * whole.columns;
        const own = part.windShare.subarray(layer * length, (layer + 1) * length);
        const gales = part.galeHours.subarray(layer * length, (layer + 1) * length);
        expect(differing(own, all.windShare.subarray(from, from + length))).toBe(0);
        expect(differing(gales, all.galeHours.subarray(from, from + length))).toBe(0);
      }
    }
  });
});
