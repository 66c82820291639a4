import { describe, expect, test } from 'vitest';
import { cutOf, layCover, together } from '../../src/belts/propose-cover.ts';
import { searchFor } from '../../src/belts/propose-setting.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { oddField, settingOf } from './proposed-field.ts';

const setting = settingOf(oddField());
const { request, options } = searchFor(setting, 12, ['land'], 0.6);
const { shelter, belts, mask } = request;
const cells = [...mask.keys()].filter((cell) => mask[cell]);

const byEngine = (chosen: readonly number[], band: number) => {
  const scene = {
    ...shelter.scene,
    barriers: [...shelter.scene.barriers, ...chosen.map((one) => belts[one])],
  };
  const { windShare } = runToEnd(computeShelter({ ...shelter, scene }));
  return cells.map((cell) => 1 - windShare[band * mask.length + cell]);
};

describe('what belts come to without asking the engine again', () => {
  test('one belt alone, and nothing, are what the engine has for it in each season', () => {
    for (const [band, season] of (['growing', 'rest', 'year'] as const).entries()) {
      const cover = runToEnd(layCover(shelter, belts, mask, season));
      for (const chosen of [[], [0], [belts.length - 1]]) {
        const cut = cutOf(cover, together(cover, chosen));
        const engine = byEngine(chosen, band);
        expect(Math.max(...engine.map((one, i) => Math.abs(cut[i] - one)))).toBeLessThan(0.004);
      }
    }
  });

  test('sets of belts apart from each other agree with the engine; touching ones nearly', () => {
    const cover = runToEnd(layCover(shelter, belts, mask, 'growing'));
    const random = seededRandom(4);
    const misses: number[] = [];
    for (let trial = 0; trial < 12; trial++) {
      const chosen: number[] = [];
      while (chosen.length < 3) {
        const one = Math.floor(random() * belts.length);
        const clear = chosen.every((other) => other !== one && !request.excluded[one * belts.length + other]);
        if (clear) chosen.push(one);
      }
      const cut = cutOf(cover, together(cover, chosen));
      misses.push(...byEngine(chosen, 0).map((engine, i) => cut[i] - engine));
    }
    const mean = misses.reduce((sum, miss) => sum + Math.abs(miss), 0) / misses.length;
    const sorted = misses.map(Math.abs).sort((a, b) => a - b);
    const p95 = sorted[Math.floor(0.95 * sorted.length)];
    console.log(
      `cut by the cover against the engine: mean ${mean.toFixed(4)}, 95th percentile ${p95.toFixed(4)}`,
    );
    expect(mean).toBeLessThan(0.002);
    expect(p95).toBeLessThan(0.01);
  });

  test('there is something to choose from', () => {
    expect(options.length).toBe(belts.length);
    expect(options.length).toBeGreaterThan(20);
  });
});
