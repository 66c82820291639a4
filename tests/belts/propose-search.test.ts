import { describe, expect, test } from 'vitest';
import { type Cover, cutOf, cutWith, together } from '../../src/belts/propose-cover.ts';
import { isBetter, judge, type SearchTask, searchBelts } from '../../src/belts/propose-search.ts';
import { seededRandom } from '../../src/numeric/random.ts';

/** A row of cells, some winds, and belts that each shelter a stretch of it in some of the winds. */
function seededTask(seed: number, belts: number): SearchTask {
  const random = seededRandom(seed);
  const [cells, layers] = [40, 6];
  const shares = Array.from({ length: layers }, () => 0.2 + random());
  const whole = shares.reduce((a, b) => a + b, 0);
  const row = () => {
    const deficits = new Float32Array(layers * cells);
    const middle = random() * cells;
    const reach = 6 + random() * 14;
    const from = Math.floor(random() * layers);
    for (let k = 0; k < 2 + Math.floor(random() * 4); k++) {
      const layer = (from + k) % layers;
      for (let i = 0; i < cells; i++) {
        const away = Math.abs(i - middle) / reach;
        deficits[layer * cells + i] = away < 1 ? 0.8 * (1 - away * away) : away < 1.3 ? -0.1 : 0;
      }
    }
    return deficits;
  };
  const cover: Cover = {
    cells,
    weight: Float32Array.from({ length: layers * cells }, (_, i) => shares[Math.floor(i / cells)] / whole),
    landCut: new Float32Array(cells),
    standing: new Float32Array(layers * cells),
    belts: Array.from({ length: belts }, row),
    chained: false,
  };
  const lines = Array.from({ length: belts }, () => Math.floor(random() * belts * 1.5));
  return {
    cover,
    cutShare: 0.35,
    overShare: 0.3 + 0.65 * random(),
    costs: Float64Array.from({ length: belts }, () => 1 + 9 * random()),
    excludes: (a, b) => lines[a] === lines[b],
    mostBelts: belts,
  };
}

/** Every set of belts that may stand together. */
function bruteForce(task: SearchTask) {
  const count = task.cover.belts.length;
  let best = judge(task, []);
  for (let set = 1; set < 1 << count; set++) {
    const chosen = Array.from({ length: count }, (_, i) => i).filter((i) => set & (1 << i));
    if (chosen.some((a) => chosen.some((b) => a < b && task.excludes(a, b)))) continue;
    const tried = judge(task, chosen);
    if (isBetter(tried, best)) best = tried;
  }
  return best;
}

describe('the search for belts', () => {
  test('of up to eight belts it finds what every set tried one by one comes to', () => {
    let [reached, dearest] = [0, 1];
    for (let seed = 1; seed <= 20; seed++) {
      const task = seededTask(seed, 5 + (seed % 4));
      const best = bruteForce(task);
      const found = searchBelts(task);
      expect(found.enough, `seed ${seed}`).toBe(best.enough);
      if (!best.enough) {
        expect(found.overShare).toBeCloseTo(best.overShare, 9);
        continue;
      }
      reached++;
      dearest = Math.max(dearest, found.cost / Math.max(1e-9, best.cost));
    }
    console.log(
      `${reached} of 20 can be reached; dearest answer ${dearest.toFixed(4)} of the cheapest there is`,
    );
    expect(reached).toBeGreaterThan(8);
    expect(reached).toBeLessThan(20);
    expect(dearest).toBeCloseTo(1, 9);
  });

  test('the same question has the same answer, whatever order the belts come in', () => {
    for (let seed = 30; seed < 40; seed++) {
      const task = seededTask(seed, 8);
      const found = searchBelts(task);
      expect(searchBelts(task)).toEqual(found);
      const turned: SearchTask = {
        ...task,
        cover: { ...task.cover, belts: [...task.cover.belts].reverse() },
        costs: Float64Array.from(task.costs).reverse(),
        excludes: (a, b) => task.excludes(7 - a, 7 - b),
      };
      expect(searchBelts(turned).cost).toBeCloseTo(found.cost, 9);
    }
  });

  test('nothing is planted where it is enough already, and exclusive belts never stand together', () => {
    const task = seededTask(3, 8);
    expect(searchBelts({ ...task, overShare: 0 }).chosen).toEqual([]);
    const one = searchBelts({ ...task, overShare: 1, excludes: () => true });
    expect(one.chosen.length).toBeLessThanOrEqual(1);
  });

  test('one more belt laid over the rest comes to the same as all together', () => {
    const { cover } = seededTask(7, 6);
    const before = together(cover, [1, 4]);
    const kept = before.slice();
    const with_ = cutWith(cover, before, cover.belts[2]);
    expect(before).toEqual(kept);
    const all = cutOf(cover, together(cover, [1, 2, 4]));
    with_.forEach((cut, i) => {
      expect(cut).toBeCloseTo(all[i], 6);
    });
  });
});
