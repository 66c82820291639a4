/**
 * The light engine against the plain reference, in one run: a field of 0.81 ha at 0.5 m on rolling land, 200 crowns in
 * three leaf classes, two belts; a full year, direct and diffuse, on one thread and on two. Seeded. What the reference
 * makes of its cells is held against the engine's year, so that the ratio is between two that agree. The engine's times
 * are by the clock, the reference's are the processor's: what else the machine does can only make the ratio smaller.
 * The reference takes some ten minutes.
 */
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { runLight } from '../../src/jobs/run-light.ts';
import { computeLight } from '../../src/light/compute-light.ts';
import { lightPlan } from '../../src/light/light-plan.ts';
import type { LightRequest, LightResult } from '../../src/light/light-types.ts';
import { cellCentreX, cellCentreY, cellCount } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { referenceCell } from '../reference/reference-light.ts';
import { plainYear } from '../reference/reference-sun.ts';
import { orchard } from './orchard.ts';

const REFERENCE_CELLS = 200;
const RUNS = 9;
const PROGRESS_EVERY = 25;
type Row = Record<string, string | number>;

export const title = 'Light: 0.81 ha at 0.5 m, 200 crowns, two belts, full year, direct and diffuse';

export async function bench(): Promise<Row[]> {
  const request = orchard();
  const cells = cellCount(request.grid);
  const one = await timed(() => runToEnd(computeLight(request)));
  const runner = createNodeRunner(2);
  const two = await timed(() => runLight(runner, request)).finally(() => runner.dispose());
  const plain = reference(request, one.result);

  const row = (what: string, msACell: number, figures: Row): Row => ({
    what,
    ...figures,
    'cells/s': Number((1000 / msACell).toPrecision(4)),
    'times the reference, a cell': Math.round(plain.msACell / msACell),
  });
  const engineRow = (what: string, { bestMs, medianMs }: Timed): Row =>
    row(what, bestMs / cells, { cells, 'best s': seconds(bestMs), 'median s': seconds(medianMs) });
  const { sun, sky } = lightPlan(request.scene);
  return [
    engineRow('engine, 1 thread', one),
    engineRow('engine, 2 threads', two),
    row('plain reference, 1 thread', plain.msACell, {
      cells: REFERENCE_CELLS,
      'all s': seconds(REFERENCE_CELLS * plain.msACell),
    }),
    {
      what: `${sun.length} sun and ${sky.length} sky directions; engine less reference, share of open hours: mean ${percent(plain.meanError)}, worst of ${REFERENCE_CELLS} ${percent(plain.worstError)}`,
    },
  ];
}

interface Timed {
  readonly bestMs: number;
  readonly medianMs: number;
}

/** The first call warms up and is not counted. */
async function timed(
  compute: () => LightResult | Promise<LightResult>,
): Promise<Timed & { readonly result: LightResult }> {
  let result = await compute();
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    result = await compute();
    times.push(performance.now() - start);
  }
  return { result, bestMs: Math.min(...times), medianMs: median(times) };
}

/** Cells of the field drawn by lot, each as the plain reference has it. The mean is what the ratio is taken from. */
function reference({ scene, grid, readingHeightM }: LightRequest, engine: LightResult) {
  const cells = cellCount(grid);
  const random = seededRandom(11);
  const year = plainYear(scene);
  const times: number[] = [];
  const errors: number[] = [];
  for (let k = 1; k <= REFERENCE_CELLS; k++) {
    const cell = Math.floor(random() * cells);
    const x = cellCentreX(grid, cell % grid.columns);
    const y = cellCentreY(grid, Math.floor(cell / grid.columns));
    const start = process.cpuUsage();
    const plain = referenceCell(scene, year, x, y, readingHeightM);
    const { user, system } = process.cpuUsage(start);
    times.push((user + system) / 1000);
    let difference = 0;
    let open = 0;
    for (let month = 0; month < 12; month++) {
      difference += engine.directHours[month * cells + cell] - plain.directHours[month];
      open += plain.openHours[month];
    }
    errors.push(Math.abs(difference) / open);
    if (k % PROGRESS_EVERY === 0)
      console.error(`reference: ${k} of ${REFERENCE_CELLS} cells, ${seconds(sum(times))} s`);
  }
  return {
    msACell: sum(times) / REFERENCE_CELLS,
    meanError: sum(errors) / REFERENCE_CELLS,
    worstError: Math.max(...errors),
  };
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];
const seconds = (ms: number): number => Number((ms / 1000).toFixed(3));
const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
