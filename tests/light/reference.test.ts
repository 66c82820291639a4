import { expect, test } from 'vitest';
import { computeLight } from '../../src/light/compute-light.ts';
import { STATED_YEAR_ERROR } from '../../src/light/stated-error.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { referenceCell } from '../reference/reference-light.ts';
import { plainYear } from '../reference/reference-sun.ts';
import { SCENE_SEEDS, seededScene } from '../reference/seeded-scene.ts';

const CELLS_A_SCENE = 12;
const errors = {
  year: [] as number[],
  month: [] as number[],
  shareMonth: [] as number[],
  shareSeason: [] as number[],
};

test.each(SCENE_SEEDS)(
  'seeded scene %d: the engine agrees with every ten minutes, crown and piece',
  (seed) => {
    const request = seededScene(seed);
    const { grid } = request;
    const cells = grid.columns * grid.rows;
    const result = runToEnd(computeLight(request));
    const year = plainYear(request.scene);
    const random = seededRandom(seed);
    const here: number[] = [];
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
        errors.month.push(Math.abs(error) / plain.openHours[month]);
        errors.shareMonth.push(Math.abs(result.lightShare[at] - plain.lightShare[month]));
        const mol = plain.dailyLightIntegral[month];
        expect(Math.abs(result.dailyLightIntegral[at] - mol)).toBeLessThan(
          0.05 * result.openDailyLightIntegral[month],
        );
      }
      here.push(Math.abs(difference) / open);
      errors.shareSeason.push(Math.abs(result.lightShare[12 * cells + cell] - plain.lightShare[12]));
    }
    errors.year.push(...here);
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
  expect(errors.year).toHaveLength(SCENE_SEEDS.length * CELLS_A_SCENE);
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
});
