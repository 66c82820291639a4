import type { Barrier } from '../../src/crowns/barrier.ts';
import { CROWN_FORMS, type CrownSet } from '../../src/crowns/crown-set.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import type { Relief } from '../../src/wind/relief.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import type { ClimateSector, ShelterOptions, ShelterRequest } from '../../src/wind/shelter-types.ts';

/** Small drawn scenes for the shelter tests. */
export const ALL_GUESSES: ShelterOptions = USUAL_SHELTER_OPTIONS;
export const NO_GUESSES = Object.fromEntries(
  Object.keys(USUAL_SHELTER_OPTIONS).map((key) => [key, false]),
) as unknown as ShelterOptions;

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

/** A tree: x, y, height, crown base and radius, metres; leaf class 1 loses its leaves. */
export interface DrawnTree {
  readonly x: number;
  readonly y: number;
  readonly topM: number;
  readonly baseM: number;
  readonly radiusM: number;
  readonly leafClass?: number;
  readonly form?: number;
  /** Foliage in units of the usual. */
  readonly depth?: number;
}
export const crownSet = (trees: readonly DrawnTree[]): CrownSet => ({
  count: trees.length,
  values: Float64Array.from(
    trees.flatMap(({ x, y, topM, baseM, radiusM, depth = 1 }) => [
      x,
      y,
      100,
      baseM,
      topM,
      radiusM,
      0.5 * depth,
      0.1 * depth,
    ]),
  ),
  form: Uint8Array.from(trees, ({ form }) => form ?? 0),
  leafClass: Uint8Array.from(trees, ({ leafClass }) => leafClass ?? 0),
  thing: new Uint16Array(trees.length),
});
const NO_CROWNS = crownSet([]);

/** Trees of every form thrown down by a seed on a square of 200 m, some of them deciduous. */
export function seededTrees(seed: number, count = 60): DrawnTree[] {
  const random = seededRandom(seed + 1000);
  return Array.from({ length: count }, () => {
    const topM = 1 + 9 * random();
    return {
      x: (random() - 0.5) * 200,
      y: (random() - 0.5) * 200,
      topM,
      baseM: topM * 0.3 * random(),
      radiusM: 0.3 * topM * (0.6 + random()),
      leafClass: random() < 0.5 ? 1 : 0,
      form: Math.floor(random() * CROWN_FORMS.length),
    };
  });
}

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
    crowns?: CrownSet;
    relief?: Relief | null;
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
      crowns: more.crowns ?? NO_CROWNS,
      relief: more.relief ?? null,
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
