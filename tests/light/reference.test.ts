import { expect, test } from 'vitest';
import { computeLight } from '../../src/light/compute-light.ts';
import { STATED_YEAR_ERROR } from '../../src/light/stated-error.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { referenceCell } from '../reference/reference-light.ts';
import { plainYear } from '../reference/reference-sun.ts';
import { landHidesSun } from '../reference/seeded-land.ts';
import { SCENE_SEEDS, seededScene } from '../reference/seeded-scene.ts';

const CELLS_A_SCENE = 12;
/** By scene, the share of the year's sun that the land hides from its cells. */
const behindLand: number[] = [];
const errors = {
  year: [] as number[],
  month: [] as number[],
  shareMonth: [] as number[],
  shareSeason: [] as number[],
  molMonth: [] as number[],
};

test.each(SCENE_SEEDS)(
  'seeded scene %d: the engine agrees with every ten minutes, crown and piece',
  (seed) => {
    const request = seededScene(seed);
    const { grid } = request;
    const cells = grid.columns * grid.rows;
    const result = runToEnd(computeLight(request));
    const year = plainYear(request.scene);
    const ridge = landHidesSun(seed);
    const upHours = new Float64Array(12);
    for (const { month, hours } of year.moments) upHours[month] += hours;
    const random = seededRandom(seed);
    const here: number[] = [];
    let hidden = 0;
    while (here.length < CELLS_A_SCENE) {
      const cell = Math.floor(random() * cells);
      if (Number.isNaN(result.lightShare[cell])) continue;
      const x = grid.westM + ((cell % grid.columns) + 0.5) * grid.cellM;
      const y = grid.northM - (Math.floor(cell / grid.columns) + 0.5) * grid.cellM;
      const plain = referenceCell(request.scene, year, x, y, request.readingHeightM);
      let difference = 0;
      let open = 0;
      for (let month = 0; month < 12; month++) {
        const at = month * cells + cell;
        const error = result.directHours[at] - plain.directHours[month];
        difference += error;
        open += plain.openHours[month];
        hidden += upHours[month] - plain.openHours[month];
        // A month whose whole sun is behind the land is a share of the hours that it is up.
        errors.month.push(Math.abs(error) / (plain.openHours[month] || upHours[month]));
        errors.shareMonth.push(Math.abs(result.lightShare[at] - plain.lightShare[month]));
        const mol = result.dailyLightIntegral[at] - plain.dailyLightIntegral[month];
        const molShare = Math.abs(mol) / result.openDailyLightIntegral[month];
        errors.molMonth.push(molShare);
        // About the solstice one direction stands for seven hours of a month: where the edge of a ridge lies along the
        // sun's course for weeks, a month of one cell can be off by more (with a sun every five minutes it is not).
        if (!ridge) expect(molShare).toBeLessThan(0.05);
      }
      here.push(Math.abs(difference) / open);
      errors.shareSeason.push(Math.abs(result.lightShare[12 * cells + cell] - plain.lightShare[12]));
    }
    errors.year.push(...here);
    behindLand.push(hidden / (CELLS_A_SCENE * upHours.reduce((a, b) => a + b)));
    expect(here.reduce((a, b) => a + b) / here.length).toBeLessThan(0.005);
  },
);

test('over all scenes the errors are within what is promised and stated', () => {
  const of = (list: number[]) => {
    const sorted = [...list].sort((a, b) => a - b);
    return {
      mean: sorted.reduce((a, b) => a + b, 0) / sorted.length,
      p99: sorted[Math.ceil(0.99 * sorted.length) - 1],
      worst: sorted[sorted.length - 1],
    };
  };
  expect(errors.year).toHaveLength(20 * CELLS_A_SCENE);
  console.log(`behind the land: ${behindLand.map((share) => `${(100 * share).toFixed(0)} %`).join(', ')}`);
  expect(behindLand.filter((share) => share > 0.08).length).toBeGreaterThanOrEqual(5);
  for (const [name, list] of Object.entries(errors)) {
    const { mean, p99, worst } = of(list);
    console.log(`${name}: mean ${mean.toFixed(4)}, p99 ${p99.toFixed(4)}, worst ${worst.toFixed(4)}`);
  }
  const year = of(errors.year);
  expect(year.mean).toBeLessThan(STATED_YEAR_ERROR.mean);
  expect(year.p99).toBeLessThan(STATED_YEAR_ERROR.p99);
  expect(of(errors.month).p99).toBeLessThan(0.04);
  expect(of(errors.shareSeason).p99).toBeLessThan(0.01);
  expect(of(errors.shareMonth).p99).toBeLessThan(0.02);
  expect(of(errors.molMonth).p99).toBeLessThan(0.02);
});
