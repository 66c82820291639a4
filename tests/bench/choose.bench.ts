/**
 * Twenty fields on 200 ha at 2 m on two threads: all that is asked of each before one is chosen, and how firm the
 * choice is. Seeded.
 */
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { type ChooseRequest, runChoose } from '../../src/jobs/run-choose.ts';
import { runChooseEnds } from '../../src/jobs/run-choose-ends.ts';
import { choosingDefaults } from '../../src/site/records/choosing.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { twentyFields } from './twenty-fields.ts';

const THREADS = 2;
const RUNS = 2;
type Row = Record<string, string | number>;

export const title =
  'Choosing the ground: twenty fields, 200 ha at 2 m, four states and what is not their own';

export async function bench(): Promise<Row[]> {
  const { document, options, fields } = twentyFields();
  const request: ChooseRequest = {
    document,
    options,
    fields,
    cellM: 2,
    reading: { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS },
    lightHeightM: 0.1,
    enough: choosingDefaults.enough,
  };
  const runner = createNodeRunner(THREADS);
  try {
    const { fields: found } = await runChoose(runner, request);
    const all = await best(() => runChoose(runner, request));
    const ends = await best(() => runChooseEnds(runner, request, found, choosingDefaults.order));
    const row = (what: string, ms: number): Row => ({ what, s: Number((ms / 1000).toPrecision(3)) });
    return [
      row('all that is asked of each field', all),
      row('the same on coarse cells at eight ends of what is not known', ends),
    ];
  } finally {
    runner.dispose();
  }
}

async function best(work: () => Promise<unknown>): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let run = 0; run < RUNS; run++) {
    const from = performance.now();
    await work();
    least = Math.min(least, performance.now() - from);
  }
  return least;
}
