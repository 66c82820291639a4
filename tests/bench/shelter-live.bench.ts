/**
 * Shelter under a moving hand: a vertex of one belt of forty is dragged, and 2 ha at 1 m follow on two worker threads;
 * from the request to the whole field's answer. Beside it what the fewer directions cost in exactness.
 */
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { followShelter, runShelter } from '../../src/jobs/run-shelter.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import type { ShelterRequest } from '../../src/wind/shelter-types.ts';
import { fortyBelts, SIDE_M } from './forty-belts.ts';

const THREADS = 2;
const FIELD_M = 141;
const DRAGS = 10;
const STEPS = 20;
const STEP_M = 0.5;

export const title = 'Live shelter: 2 ha at 1 m among 40 belts, one vertex dragged, two threads';

export async function bench(): Promise<Record<string, string | number>[]> {
  const runner = createNodeRunner(THREADS);
  try {
    const rows: Record<string, string | number>[] = [];
    // The first warms up and is not counted.
    await drags(0);
    for (const deciduous of [0, 40]) rows.push(await drags(deciduous));
    return rows;
  } finally {
    runner.dispose();
  }

  async function drags(deciduous: number): Promise<Record<string, string | number>> {
    const whole = fortyBelts(deciduous);
    const random = seededRandom(3);
    const corner = (SIDE_M - FIELD_M) / 2;
    const grid = { ...whole.grid, columns: FIELD_M, rows: FIELD_M, westM: corner, northM: corner + FIELD_M };
    await runShelter(runner, { ...whole, grid });
    const first: number[] = [];
    const live: number[] = [];
    const exact: number[] = [];
    const jumps: number[] = [];
    for (let drag = 0; drag < DRAGS; drag++) {
      const which = Math.floor(random() * whole.scene.barriers.length);
      let request: ShelterRequest = { ...whole, grid };
      let shown: Float32Array = new Float32Array();
      for (let step = 0; step < STEPS; step++) {
        request = moved(request, which);
        const start = performance.now();
        shown = (await followShelter(runner, { ...request, held: [which] })).windShare;
        (step === 0 ? first : live).push(performance.now() - start);
      }
      const start = performance.now();
      const { windShare } = await runShelter(runner, request);
      exact.push(performance.now() - start);
      windShare.forEach((share, i) => void jumps.push(Math.abs(share - shown[i])));
    }
    return {
      'belts that drop their leaves': deciduous,
      steps: live.length,
      'first step ms': at(first, 0.5),
      'median ms': at(live, 0.5),
      '95th percentile ms': at(live, 0.95),
      'exact at rest ms': at(exact, 0.5),
      'jump at rest, mean': Number((jumps.reduce((sum, jump) => sum + jump, 0) / jumps.length).toFixed(5)),
      'jump, 99th percentile': at(jumps, 0.99, 4),
    };
  }
}

/** The scene with the first vertex of one belt a step further east. */
function moved(request: ShelterRequest, which: number): ShelterRequest {
  const barriers = request.scene.barriers.map((barrier, index) => {
    if (index !== which) return barrier;
    const xyM = barrier.xyM.slice();
    xyM[0] += STEP_M;
    return { ...barrier, xyM };
  });
  return { ...request, scene: { ...request.scene, barriers } };
}

function at(values: readonly number[], share: number, digits = 1): number {
  const sorted = Float64Array.from(values).sort();
  return Number(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(digits));
}
