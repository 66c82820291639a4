import { describe, expect, it } from 'vitest';
import type { Barrier } from '../../src/crowns/barrier.ts';
import type { Grid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { reliefOf } from '../../src/wind/relief.ts';
import {
  ALL_GUESSES,
  area,
  crownSet,
  type DrawnTree,
  line,
  request,
  sector,
  seededBarriers,
  seededTrees,
} from './shelter-scenes.ts';

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
const movedTrees = (
  trees: readonly DrawnTree[],
  move: (x: number, y: number) => readonly [number, number],
  scale = 1,
) =>
  crownSet(
    trees.map((tree) => {
      const [x, y] = move(tree.x, tree.y);
      const [topM, baseM, radiusM] = [tree.topM, tree.baseM, tree.radiusM].map((m) => m * scale);
      return { ...tree, x, y, topM, baseM, radiusM, depth: 1 / scale };
    }),
  );
/** Rolling land of 600 m, mirrored or larger. */
const land = (scale = 1, mirrored = 1): Grid => ({
  columns: 60,
  rows: 60,
  cellM: 10 * scale,
  westM: -300 * scale,
  northM: 300 * scale,
  values: Float32Array.from({ length: 3600 }, (_, i) => {
    const [x, y] = [mirrored * ((i % 60) * 10 - 295), 295 - Math.floor(i / 60) * 10];
    return scale * (12 / (1 + ((x - y) / 90) ** 2) - 8 * Math.exp(-((x + 60) ** 2 + (y - 70) ** 2) / 4000));
  }),
});
const shares = (
  barriers: readonly Barrier[],
  places: readonly (readonly [number, number])[],
  more: Parameters<typeof request>[1],
): number[] =>
  places.map(([x, y]) => {
    const one = { columns: 1, rows: 1, cellM: 0.5, westM: x - 0.25, northM: y + 0.25 };
    return compute(request(barriers, { ...more, grid: one })).windShare[0];
  });
const distanceTo = ({ xyM }: Barrier, x: number, y: number): number => {
  const [dx, dy] = [xyM[2] - xyM[0], xyM[3] - xyM[1]];
  const q = Math.min(1, Math.max(0, ((x - xyM[0]) * dx + (y - xyM[1]) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - xyM[0] - q * dx, y - xyM[1] - q * dy);
};
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
    const trees = seededTrees(seed);
    expectAlike(
      shares(barriers, places, { growing: winds, crowns: crownSet(trees) }),
      shares(
        moved(barriers, turn),
        places.map(([x, y]) => turn(x, y)),
        { growing: turned, crowns: movedTrees(trees, turn) },
      ),
    );
  });
  it.each(SEEDS)('about scaling every length with the reading height, the land too (seed %i)', (seed) => {
    const barriers = seededBarriers(seed);
    const places = points(seed);
    const bigger = (x: number, y: number) => [3 * x, 3 * y] as const;
    const trees = seededTrees(seed);
    const around = { growing: winds, crowns: crownSet(trees), relief: reliefOf(land()) };
    expectAlike(
      shares(barriers, places, around),
      shares(
        moved(barriers, bigger, 3),
        places.map(([x, y]) => bigger(x, y)),
        {
          growing: winds,
          readingHeightM: 4.5,
          crowns: movedTrees(trees, bigger, 3),
          relief: reliefOf(land(3)),
        },
      ),
    );
  });
  it.each(SEEDS)('about a mirror, of the land too (seed %i)', (seed) => {
    const mirror = (x: number, y: number) => [-x, y] as const;
    const barriers = seededBarriers(seed);
    const places = points(seed);
    const trees = seededTrees(seed);
    expectAlike(
      shares(barriers, places, { growing: winds, crowns: crownSet(trees), relief: reliefOf(land()) }),
      shares(
        moved(barriers, mirror),
        places.map(([x, y]) => mirror(x, y)),
        {
          crowns: movedTrees(trees, mirror),
          relief: reliefOf(land(1, -1)),
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
  it.each(SEEDS)(
    'a thing of porosity 1, or a crown without leaves or twigs, does nothing (seed %i)',
    (seed) => {
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
      const trees = seededTrees(seed);
      const more = { growing: winds, grid, crowns: crownSet(trees) };
      const thin = trees.map((tree) => ({ ...tree, depth: 0 }));
      const withAir = compute(
        request([...barriers, ...air], { ...more, crowns: crownSet([...trees, ...thin]) }),
      );
      const without = compute(request(barriers, more));
      expect(differing(withAir.windShare, without.windShare)).toBe(0);
      expect(differing(withAir.galeHours, without.galeHours)).toBe(0);
    },
  );
  it.each(SEEDS)('another belt raises the wind only beside its ends and in gaps (seed %i)', (seed) => {
    const barriers = seededBarriers(seed);
    // A belt takes over the trees that stand in it; these stand beside it.
    const clear = seededTrees(seed).filter(({ x, y }) => distanceTo(added(), x, y) > 3);
    const crowns = crownSet(clear);
    const options = { ...ALL_GUESSES, endsAndGaps: false };
    const before = compute(request(barriers, { growing: winds, grid, options, crowns })).windShare;
    for (const chainedBelts of [false, true]) {
      const more = { growing: winds, grid, options: { ...options, chainedBelts }, crowns };
      const alone = chainedBelts ? compute(request(barriers, more)).windShare : before;
      compute(request([...barriers, added()], more)).windShare.forEach((share, i) => {
        if (!Number.isNaN(share)) expect(share).toBeLessThanOrEqual(alone[i] + 1e-6);
      });
    }
    const after = compute(
      request([...barriers, added()], { growing: winds, grid, options, crowns }),
    ).windShare;
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
    const more = { growing: winds, grid, crowns: crownSet(seededTrees(seed)), relief: reliefOf(land()) };
    const never = compute(request(barriers, more));
    compute(request([...barriers, added()], more));
    const taken = compute(
      request(
        [...barriers, added()].filter(({ thing }) => thing !== 99),
        more,
      ),
    );
    expect(differing(taken.windShare, never.windShare)).toBe(0);
    expect(differing(taken.galeHours, never.galeHours)).toBe(0);
  });
  it.each(SEEDS)('another tree never raises the wind, nor does the chained rule (seed %i)', (seed) => {
    const trees = seededTrees(seed);
    const barriers = seededBarriers(seed);
    const options = { ...ALL_GUESSES, endsAndGaps: false };
    const more = { growing: winds, grid, options };
    const open = compute(request(barriers, more)).windShare;
    const among = compute(request(barriers, { ...more, crowns: crownSet(trees) })).windShare;
    const chained = compute(
      request(barriers, {
        ...more,
        crowns: crownSet(trees),
        options: { ...options, chainedBelts: true },
      }),
    ).windShare;
    open.forEach((share, i) => {
      if (Number.isNaN(share)) return;
      expect(among[i]).toBeLessThanOrEqual(share + 1e-6);
      expect(chained[i]).toBeLessThanOrEqual(among[i] + 1e-6);
    });
    // Of the same trees once more in the same places nothing rises anywhere.
    const twice = compute(request(barriers, { ...more, crowns: crownSet([...trees, ...trees]) })).windShare;
    among.forEach((share, i) => {
      if (!Number.isNaN(share)) expect(twice[i]).toBeLessThanOrEqual(share + 1e-6);
    });
  });
  it.each(SEEDS)('shares stay above nothing and below 1.2, on a crest below 1.92 (seed %i)', (seed) => {
    const more = { growing: winds, grid, crowns: crownSet(seededTrees(seed)) };
    const level = compute(request(seededBarriers(seed), more)).windShare;
    for (const share of level) if (!Number.isNaN(share)) expect(share > 0 && share <= 1.2).toBe(true);
    const rolling = compute(request(seededBarriers(seed), { ...more, relief: reliefOf(land()) })).windShare;
    for (const share of rolling) if (!Number.isNaN(share)) expect(share > 0 && share <= 1.92).toBe(true);
  });
  it.each(SEEDS)('without its guess a part does nothing at all (seed %i)', (seed) => {
    const barriers = seededBarriers(seed);
    const options = { ...ALL_GUESSES, scatteredTrees: false, landform: false };
    const bare = compute(request(barriers, { growing: winds, grid, options }));
    const there = compute(
      request(barriers, {
        growing: winds,
        grid,
        options,
        crowns: crownSet(seededTrees(seed)),
        relief: reliefOf(land()),
      }),
    );
    expect(differing(there.windShare, bare.windShare)).toBe(0);
    expect(differing(there.galeHours, bare.galeHours)).toBe(0);
  });
});

describe('rows asked for alone', () => {
  it.each([
    { columns: 90, rows: 80, cellM: 0.3, westM: -12.9, northM: 11.7 },
    { columns: 600, rows: 500, cellM: 0.5, westM: -150, northM: 125 },
  ])('come out exactly as in the whole', (whole) => {
    const more = {
      growing: winds,
      rest: [sector(180, 1, 6)],
      crowns: crownSet(seededTrees(3)),
      relief: reliefOf(land()),
    };
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
