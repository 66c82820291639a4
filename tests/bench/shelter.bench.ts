import type { Barrier } from '../../src/crowns/barrier.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import type { ClimateSector, ShelterRequest } from '../../src/wind/shelter-types.ts';
import { referenceShelter } from '../reference/shelter-reference.ts';

export const title = 'Shelter: 20 ha at 1 m, 40 belts, 16 sectors of five directions, two seasons';

const SIDE_M = 448;

function sectors(random: () => number): ClimateSector[] {
  return Array.from({ length: 16 }, (_, i) => ({
    fromDeg: i * 22.5,
    frequency: 1 / 16,
    meanSpeedMps: 3 + 2 * random(),
    weibullK: 2,
  }));
}

/** A seeded scene of three-vertex belts; `deciduous` of them lose their leaves in the rest of the year. */
function request(deciduous: number): ShelterRequest {
  const random = seededRandom(11);
  const barriers = Array.from({ length: 40 }, (_, thing): Barrier => {
    const x = random() * SIDE_M;
    const y = random() * SIDE_M;
    const azimuth = random() * 2 * Math.PI;
    const xyM = new Float64Array(6);
    for (let v = 0; v < 3; v++) {
      xyM[2 * v] = x + (v - 1) * 75 * Math.sin(azimuth);
      xyM[2 * v + 1] = y + (v - 1) * 75 * Math.cos(azimuth) + (v === 1 ? 6 : 0);
    }
    const heightM = new Float64Array(3).fill(5 + 9 * random());
    const porosityOff = thing < deciduous ? 0.7 : 0.4;
    const leafClass = thing < deciduous ? 1 : 0;
    return {
      thing,
      shape: 'line',
      xyM,
      heightM,
      baseM: 0,
      widthM: 3,
      porosityOn: 0.4,
      porosityOff,
      leafClass,
    };
  });
  const growingDay = Uint8Array.from({ length: 365 }, (_, day) => Number(day >= 90 && day < 273));
  return {
    scene: {
      convergenceRad: 0.01,
      growingDay,
      ground: {
        columns: 2,
        rows: 2,
        cellM: SIDE_M,
        westM: -SIDE_M / 2,
        northM: SIDE_M * 1.5,
        values: new Float32Array(4),
      },
      barriers,
      leaf: {
        classCount: 2,
        phaseCount: 4,
        phaseOfDay: Uint8Array.from({ length: 365 }, (_, day) =>
          day < 105 || day >= 319 ? 0 : day < 135 || day >= 288 ? 1 : day < 150 ? 2 : 3,
        ),
        leafShare: Float32Array.of(1, 0, 1, 0.5, 1, 0.8, 1, 1),
      },
      climate: {
        heightM: 10,
        growing: { calmShare: 0, sectors: sectors(random) },
        rest: { calmShare: 0, sectors: sectors(random) },
      },
    },
    grid: { columns: SIDE_M, rows: SIDE_M, cellM: 1, westM: 0, northM: SIDE_M },
    readingHeightM: 1.5,
    galeMps: 10.8,
    options: { obliqueWind: true, shortThings: true, youngBelts: true, endsAndGaps: true },
  };
}

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
    const scene = request(deciduous);
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
