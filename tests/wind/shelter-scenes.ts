import type { Barrier } from '../../src/crowns/barrier.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import type { ClimateSector, ShelterOptions, ShelterRequest } from '../../src/wind/shelter-types.ts';

/** Small drawn scenes for the shelter tests. */
export const ALL_GUESSES: ShelterOptions = {
  obliqueWind: true,
  shortThings: true,
  youngBelts: true,
  endsAndGaps: true,
};
export const NO_GUESSES: ShelterOptions = {
  obliqueWind: false,
  shortThings: false,
  youngBelts: false,
  endsAndGaps: false,
};

export function line(
  points: readonly (readonly [number, number])[],
  heightM: number | readonly number[],
  more: Partial<Barrier> = {},
): Barrier {
  return {
    thing: 0,
    shape: 'line',
    xyM: Float64Array.from(points.flat()),
    heightM: Float64Array.from(points, (_, i) => (typeof heightM === 'number' ? heightM : heightM[i])),
    baseM: 0,
    widthM: 0,
    porosityOn: 0.4,
    porosityOff: 0.4,
    leafClass: 0,
    ...more,
  };
}
export const area = (
  points: readonly (readonly [number, number])[],
  heightM: number | readonly number[],
  more: Partial<Barrier> = {},
): Barrier => line(points, heightM, { shape: 'area', ...more });

export const sector = (fromDeg: number, frequency = 1, meanSpeedMps = 5, weibullK = 2): ClimateSector => ({
  fromDeg,
  frequency,
  meanSpeedMps,
  weibullK,
});

/** Growing season 1 April to 30 September of a year of 365 days. */
export const growingDay = Uint8Array.from({ length: 365 }, (_, day) => Number(day >= 90 && day < 273));

/** Leaf class 0 evergreen, class 1 deciduous: bare, half out, full. */
export const leaf = {
  classCount: 2,
  phaseCount: 3,
  phaseOfDay: Uint8Array.from({ length: 365 }, (_, day) =>
    day < 105 || day >= 310 ? 0 : day < 135 || day >= 280 ? 1 : 2,
  ),
  leafShare: Float32Array.of(1, 0, 1, 0.5, 1, 1),
};

export function request(
  barriers: readonly Barrier[],
  more: {
    growing?: readonly ClimateSector[];
    rest?: readonly ClimateSector[];
    grid?: ShelterRequest['grid'];
    options?: ShelterOptions;
    readingHeightM?: number;
    convergenceRad?: number;
  } = {},
): ShelterRequest {
  const growing = more.growing ?? [sector(0)];
  return {
    scene: {
      convergenceRad: more.convergenceRad ?? 0,
      growingDay,
      ground: { columns: 1, rows: 1, cellM: 10, westM: 0, northM: 0, values: Float32Array.of(100) },
      barriers,
      leaf,
      climate: {
        heightM: 10,
        growing: { calmShare: 0, sectors: growing },
        rest: { calmShare: 0, sectors: more.rest ?? growing },
      },
    },
    grid: more.grid ?? { columns: 1, rows: 1, cellM: 1, westM: -0.5, northM: 0.5 },
    readingHeightM: more.readingHeightM ?? 1.5,
    galeMps: 10.8,
    options: more.options ?? ALL_GUESSES,
  };
}

/** One cell whose centre is at (x, y). */
export const cellAt = (x: number, y: number): ShelterRequest['grid'] => ({
  columns: 1,
  rows: 1,
  cellM: 1,
  westM: x - 0.5,
  northM: y + 0.5,
});

/** Belts, blocks, buildings, walls and nets thrown down by a seed on a square of 240 m. */
export function seededBarriers(seed: number): Barrier[] {
  const random = seededRandom(seed);
  const place = () => (random() - 0.5) * 200;
  return Array.from({ length: 7 }, (_, thing) => {
    const kind = Math.floor(random() * 5);
    const [x, y, azimuth] = [place(), place(), random() * Math.PI * 2];
    const at = (alongM: number, asideM: number): [number, number] => [
      x + alongM * Math.sin(azimuth) + asideM * Math.cos(azimuth),
      y + alongM * Math.cos(azimuth) - asideM * Math.sin(azimuth),
    ];
    const height = 2 + 12 * random();
    const deciduous = { leafClass: 1, porosityOn: 0.3 + 0.2 * random(), porosityOff: 0.7 };
    if (kind === 0)
      return line([at(-40, 0), at(0, 8), at(45, 0)], height, { thing, widthM: 4, ...deciduous });
    if (kind === 1) {
      return line([at(-30, 0), at(25, 5)], [height, height * 0.6], {
        thing,
        widthM: 3,
        baseM: 0.8,
        porosityOn: 0.35,
        porosityOff: 0.35,
      });
    }
    if (kind === 2)
      return area([at(-25, -15), at(20, -18), at(8, 0), at(26, 20), at(-20, 14)], height, {
        thing,
        ...deciduous,
      });
    if (kind === 3)
      return area([at(-7, -4), at(7, -4), at(7, 4), at(-7, 4)], 5, { thing, porosityOn: 0, porosityOff: 0 });
    return line([at(-20, 0), at(20, 0)], 2.2, {
      thing,
      porosityOn: random() < 0.5 ? 0 : 0.95,
      porosityOff: 0,
    });
  });
}
