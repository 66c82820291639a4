import type { Barrier } from '../../src/crowns/barrier.ts';
import type { CrownSet } from '../../src/crowns/crown-set.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import type { ClimateSector, ShelterRequest } from '../../src/wind/shelter-types.ts';

/** Side of the square of 20 ha that is computed, m. */
export const SIDE_M = 448;

function sectors(random: () => number): ClimateSector[] {
  return Array.from({ length: 16 }, (_, i) => ({
    fromDeg: i * 22.5,
    frequency: 1 / 16,
    meanSpeedMps: 3 + 2 * random(),
    weibullK: 2,
  }));
}

/** Seeded trees over a square, half of them deciduous. */
function scatteredTrees(count: number, sideM: number): CrownSet {
  const random = seededRandom(12);
  return {
    count,
    values: Float64Array.from(
      Array.from({ length: count }, () => [
        random() * sideM,
        random() * sideM,
        0,
        1,
        3 + 6 * random(),
        2,
        0.4,
        0.1,
      ]).flat(),
    ),
    form: new Uint8Array(count),
    leafClass: Uint8Array.from({ length: count }, (_, i) => i % 2),
    thing: new Uint16Array(count),
  };
}

/** Forty seeded belts and a thousand trees on 20 ha; `deciduous` of the belts lose their leaves in the rest of the year. */
export const fortyBelts = (deciduous: number): ShelterRequest =>
  beltScene({ sideM: SIDE_M, belts: 40, trees: 1000, deciduous });

/** Seeded belts of three vertices, 150 m long, and scattered trees on a square in cells of 1 m. */
export function beltScene(scene: {
  readonly sideM: number;
  readonly belts: number;
  readonly trees: number;
  readonly deciduous: number;
}): ShelterRequest {
  const { sideM, belts, trees, deciduous } = scene;
  const random = seededRandom(11);
  const barriers = Array.from({ length: belts }, (_, thing): Barrier => {
    const x = random() * sideM;
    const y = random() * sideM;
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
        cellM: sideM,
        westM: -sideM / 2,
        northM: sideM * 1.5,
        values: new Float32Array(4),
      },
      barriers,
      crowns: scatteredTrees(trees, sideM),
      relief: null,
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
    grid: { columns: sideM, rows: sideM, cellM: 1, westM: 0, northM: sideM },
    readingHeightM: 1.5,
    galeMps: 10.8,
    options: USUAL_SHELTER_OPTIONS,
  };
}
