import { describe, expect, it } from 'vitest';
import type { CutModel, OptionGain } from '../../src/cuts/cut-model.ts';
import {
  type Choice,
  type Cut,
  compareCosts,
  type SearchTask,
  searchCuts,
} from '../../src/cuts/search-cuts.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';

const PLANTS = 8;
const OPTIONS = 3;
const SPOTS = 24;
const RAYS = 12;
/** Two patches in two seasons. */
const WANTED = 4;

interface Drawn {
  readonly model: CutModel;
  /** Depth by plant, state (0 uncut) and ray. */
  readonly depths: readonly (readonly Float64Array[])[];
  readonly open: Float64Array;
  readonly costs: readonly (readonly number[][])[];
}

/** Eight plants that stand in the way of some rays each, and what three options leave of them. */
function drawn(seed: number): Drawn {
  const random = seededRandom(seed);
  const slots = SPOTS * RAYS;
  const open = Float64Array.from({ length: slots }, () => (0.5 + random()) / RAYS);
  const depths = Array.from({ length: PLANTS }, () => {
    const full = Float64Array.from({ length: slots }, () => (random() < 0.25 ? 0.3 + 2 * random() : 0));
    // A little is left by the gentlest, nothing by the last; the one between may even stand in new ways.
    return [
      full,
      full.map((depth) => depth * (0.4 + 0.4 * random())),
      full.map((depth) => depth * 0.3 * random() + (random() < 0.02 ? 0.2 : 0)),
      full.map(() => 0),
    ];
  });
  const slotLight = open.map(
    (light, slot) => light * Math.exp(-depths.reduce((sum, of) => sum + of[0][slot], 0)),
  );
  const light = new Float64Array(SPOTS);
  slotLight.forEach((one, slot) => {
    light[Math.floor(slot / RAYS)] += one;
  });
  const gains = depths.map((of, plant) =>
    Array.from({ length: OPTIONS }, (_, o): OptionGain => {
      const touched = Array.from({ length: slots }, (_, slot) => slot).filter(
        (slot) => of[0][slot] !== of[o + 1][slot],
      );
      const spots = [...new Set(touched.map((slot) => Math.floor(slot / RAYS)))];
      return {
        plant,
        slots: Int32Array.from(touched),
        factors: Float64Array.from(touched, (slot) => Math.exp(of[0][slot] - of[o + 1][slot])),
        spots: Int32Array.from(spots),
        ends: Int32Array.from(spots, (spot) => touched.filter((slot) => slot < (spot + 1) * RAYS).length),
      };
    }),
  );
  const each = SPOTS / WANTED;
  const wanted = Array.from({ length: WANTED }, (_, w) => {
    const cleared = Array.from({ length: each }, (_, i) => {
      const spot = w * each + i;
      return open.subarray(spot * RAYS, (spot + 1) * RAYS).reduce((a, b) => a + b, 0);
    }).sort((a, b) => a - b);
    // Between what is there and what could be, so that some cuts are needed and can be enough.
    const now = Array.from(light.subarray(w * each, (w + 1) * each)).sort((a, b) => a - b);
    const shareToKeep = now[2] + (0.02 + 0.5 * random()) * (cleared[2] - now[2]);
    return {
      patch: w % 2,
      season: Math.floor(w / 2),
      first: w * each,
      end: (w + 1) * each,
      shareToKeep,
      spotsNeeded: 4,
    };
  });
  const costs = Array.from({ length: PLANTS }, () => {
    const bears = random() < 0.5;
    return Array.from({ length: OPTIONS }, (_, o) => [
      o === 0 && random() < 0.3 ? 2 : 1,
      bears ? o * 2 : 0,
      random(),
    ]);
  });
  return {
    model: { slotLight, light, cellOf: Int32Array.from(light.keys()), wanted, gains },
    depths,
    open,
    costs,
  };
}

/** Every set of cuts there is, each ray by itself: the cheapest by works, or by crop within so many works. */
function bruteForce(
  { model, depths, open, costs }: Drawn,
  order: readonly number[],
  mostWorks: number,
): number[] | null {
  let best: number[] | null = null;
  const state = new Array(PLANTS).fill(0);
  for (let n = 0; n < (OPTIONS + 1) ** PLANTS; n++) {
    let rest = n;
    for (let plant = 0; plant < PLANTS; plant++) {
      state[plant] = rest % (OPTIONS + 1);
      rest = Math.floor(rest / (OPTIONS + 1));
    }
    const sum = [0, 0, 0];
    state.forEach((o, plant) => {
      if (o > 0) for (let i = 0; i < 3; i++) sum[i] += costs[plant][o - 1][i];
    });
    if (sum[0] > mostWorks) continue;
    const cost = order.map((i) => sum[i]);
    if (best && compareCosts(cost, best) >= 0) continue;
    if (enough()) best = cost;
  }
  return best;

  function enough(): boolean {
    return model.wanted.every(({ first, end, shareToKeep, spotsNeeded }) => {
      let bright = 0;
      for (let spot = first; spot < end; spot++) {
        let light = 0;
        for (let slot = spot * RAYS; slot < (spot + 1) * RAYS; slot++) {
          let depth = 0;
          for (let plant = 0; plant < PLANTS; plant++) depth += depths[plant][state[plant]][slot];
          light += open[slot] * Math.exp(-depth);
        }
        if (light >= shareToKeep) bright++;
      }
      return bright >= spotsNeeded;
    });
  }
}

const task = ({ model, costs }: Drawn, order: readonly number[], moreWorks: number): SearchTask => ({
  model,
  correction: new Float64Array(model.light.length),
  allowed: () => true,
  costs: ([plant, option]) => order.map((i) => costs[plant][option][i]),
  works: ([plant, option]) => costs[plant][option][0],
  moreWorks,
});

const WORKS_FIRST = [0, 1, 2];
const CROP_FIRST = [1, 0, 2];

describe('the search for cuts', () => {
  it('equals brute force over all sets on eight plants, 20 seeds: fewest works, and least crop', () => {
    const sizes: number[] = [];
    for (let seed = 1; seed <= 20; seed++) {
      const scene = drawn(seed);
      const fewest = runToEnd(searchCuts(task(scene, WORKS_FIRST, 0))) as Choice;
      const expected = bruteForce(scene, WORKS_FIRST, 16) as number[];
      expect(fewest.proven).toBe(true);
      expect(compareCosts(fewest.costs, expected), `seed ${seed}: ${fewest.costs} for ${expected}`).toBe(0);
      const crop = runToEnd(searchCuts(task(scene, CROP_FIRST, 1))) as Choice;
      const leastCrop = bruteForce(scene, CROP_FIRST, expected[0] + 1) as number[];
      expect(compareCosts(crop.costs, leastCrop), `seed ${seed}: ${crop.costs} for ${leastCrop}`).toBe(0);
      sizes.push(expected[0]);
    }
    console.log(`works needed, by seed: ${sizes.join(' ')}`);
    expect(Math.max(...sizes)).toBeGreaterThan(2);
  }, 120_000);

  it('has the same plants cut when they come in another order', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const scene = drawn(seed);
      const order = [5, 2, 7, 0, 3, 6, 1, 4];
      const turned: Drawn = {
        ...scene,
        model: { ...scene.model, gains: order.map((plant) => scene.model.gains[plant]) },
        costs: order.map((plant) => scene.costs[plant]),
      };
      const one = runToEnd(searchCuts(task(scene, WORKS_FIRST, 0))) as Choice;
      const other = runToEnd(searchCuts(task(turned, WORKS_FIRST, 0))) as Choice;
      const named = (cuts: readonly Cut[], by: readonly number[]) =>
        cuts.map(([plant, option]) => `${by[plant]} ${option}`).sort();
      expect(named(other.cuts, order)).toEqual(named(one.cuts, [...order.keys()]));
    }
  });

  it('cuts nothing where all is bright, and says null where nothing is enough', () => {
    const scene = drawn(3);
    const wanting = (shareToKeep: number): Drawn => ({
      ...scene,
      model: { ...scene.model, wanted: scene.model.wanted.map((one) => ({ ...one, shareToKeep })) },
    });
    expect(runToEnd(searchCuts(task(wanting(0), WORKS_FIRST, 0)))?.cuts).toEqual([]);
    expect(runToEnd(searchCuts(task(wanting(9), WORKS_FIRST, 0)))).toBeNull();
  });
});
