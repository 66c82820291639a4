import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import type { ShelterRequest } from '../../src/wind/shelter-types.ts';
import { referenceShelter } from '../reference/shelter-reference.ts';
import { fortyBelts, SIDE_M } from './forty-belts.ts';

export const title = 'Shelter: 20 ha at 1 m, 40 belts, 16 sectors of five directions, two seasons';

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

export function bench(): Record<string, string | number>[] {
  return [0, 40].map((deciduous) => {
    const scene = fortyBelts(deciduous);
    const times: number[] = [];
    for (let i = 0; i < 4; i++) {
      const start = performance.now();
      runToEnd(computeShelter(scene));
      times.push(performance.now() - start);
    }
    const mean = times.reduce((a, b) => a + b, 0) / times.length;
    const deviation = Math.sqrt(times.reduce((sum, t) => sum + (t - mean) ** 2, 0) / times.length);
    const engine = SIDE_M ** 2 / (Math.min(...times) / 1000);
    const reference = referenceCellsPerSecond(scene);
    return {
      'belts that drop their leaves': deciduous,
      'min ms': Math.round(Math.min(...times)),
      'mean ms': Math.round(mean),
      'sd ms': Math.round(deviation),
      'engine cells/s': Math.round(engine),
      'reference cells/s': Number(reference.toPrecision(3)),
      'engine : reference': Math.round(engine / reference),
    };
  });
}
