import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { runShelter } from '../../src/jobs/run-shelter.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import type { ShelterRequest } from '../../src/wind/shelter-types.ts';
import { referenceShelter } from '../reference/shelter-reference.ts';
import { fortyBelts, SIDE_M } from './forty-belts.ts';

export const title =
  'Shelter: 20 ha at 1 m, 40 belts, 1,000 trees, 16 sectors of five directions, two seasons';

/** Cells on a side of the seeded corners on which the slow reference is timed. */
const REFERENCE_SIDE = 5;
const REFERENCE_CORNERS = 8;

/** Cells a second of the plain reference in the same scene. */
function referenceCellsPerSecond(scene: ShelterRequest): number {
  const random = seededRandom(5);
  const start = performance.now();
  for (let corner = 0; corner < REFERENCE_CORNERS; corner++) {
    const grid = {
      ...scene.grid,
      columns: REFERENCE_SIDE,
      rows: REFERENCE_SIDE,
      westM: Math.floor(random() * (SIDE_M - REFERENCE_SIDE)),
      northM: SIDE_M - Math.floor(random() * (SIDE_M - REFERENCE_SIDE)),
    };
    referenceShelter({ ...scene, grid });
  }
  const seconds = (performance.now() - start) / 1000;
  return (REFERENCE_CORNERS * REFERENCE_SIDE ** 2) / seconds;
}

const RUNS = 5;

export async function bench(): Promise<Record<string, string | number>[]> {
  const runner = createNodeRunner(2);
  const rows: Record<string, string | number>[] = [];
  try {
    for (const deciduous of [0, 40]) {
      const request = fortyBelts(deciduous);
      const reference = referenceCellsPerSecond(request);
      for (const [threads, compute] of [
        [1, () => runToEnd(computeShelter(request))],
        [2, () => runShelter(runner, request)],
      ] as const) {
        const bestMs = await bestOf(compute);
        const engine = SIDE_M ** 2 / (bestMs / 1000);
        rows.push({
          'belts that drop their leaves': deciduous,
          threads,
          'best s': Number((bestMs / 1000).toFixed(3)),
          'cells/s': Math.round(engine),
          'reference cells/s': Number(reference.toPrecision(3)),
          'engine : reference': Math.round(engine / reference),
        });
      }
    }
  } finally {
    runner.dispose();
  }
  return rows;
}

/** The first call warms up and is not counted. */
async function bestOf(compute: () => unknown): Promise<number> {
  await compute();
  let bestMs = Number.POSITIVE_INFINITY;
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    await compute();
    bestMs = Math.min(bestMs, performance.now() - start);
  }
  return bestMs;
}
