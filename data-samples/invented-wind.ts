import { seededRandom } from '../src/numeric/random.ts';
import type { WindSector } from '../src/site/records/site.ts';
import type { InventedClimate } from './invented-weather.ts';

export interface HourOfWind {
  readonly speedMps: number;
  /** Where it comes from, whole degrees, 360 = north; 0 when calm. */
  readonly fromDeg: number;
}

const HOURS = 8760;
/** Storms outside and inside the growing season. */
const STORMS_REST = 13;
const STORMS_GROWING = 2;
/** Chance that the next hour's wind is drawn anew. */
const TURN_CHANCE = 0.08;
/** How much of this hour's strength the next one keeps. */
const MEMORY = 0.94;

/** Standard normal distribution function (Abramowitz & Stegun 26.2.17, error below 1e-7). */
function normalShare(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}

/** Gamma(1 + 1/k) for Weibull shapes from 1.5 to 2.5, within 0.5 %. */
const GAMMA = 0.8875;

const wholeDegrees = (deg: number): number => ((Math.round(deg) + 719) % 360) + 1;

/**
 * Hourly wind of an invented year: a sector that holds for half a day or so, a strength that drifts along the
 * sector's Weibull distribution, and storms that veer from the south-west to the north-west.
 */
export function inventedWind(climate: InventedClimate, seed: number): readonly HourOfWind[] {
  const random = seededRandom(seed);
  const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const [first, last] = climate.growingMonths;
  const isGrowing = (hour: number): boolean => {
    const month = new Date(Date.UTC(climate.year, 0, 1, hour)).getUTCMonth();
    return month >= first && month <= last;
  };
  const sectorsOf = (growing: boolean): readonly WindSector[] =>
    climate.sectors.filter(({ season }) => season === undefined || season === (growing ? 'growing' : 'rest'));
  const draw = (sectors: readonly WindSector[]): WindSector => {
    const total = sectors.reduce((sum, { frequency }) => sum + frequency, 0);
    let left = random() * total;
    for (const sector of sectors) {
      left -= sector.frequency;
      if (left < 0) return sector;
    }
    return sectors[0];
  };

  const hours: HourOfWind[] = [];
  let strength = 0;
  let sector: WindSector | null = null;
  for (let hour = 0; hour < HOURS; hour++) {
    const sectors = sectorsOf(isGrowing(hour));
    if (!sector || !sectors.includes(sector) || random() < TURN_CHANCE) sector = draw(sectors);
    strength = MEMORY * strength + Math.sqrt(1 - MEMORY ** 2) * gauss();
    const share = normalShare(strength);
    if (share < climate.calmShare) {
      hours.push({ speedMps: 0, fromDeg: 0 });
      continue;
    }
    const scaleMps = sector.meanSpeedMps / GAMMA;
    const speedMps = scaleMps * (-Math.log(1 - share)) ** (1 / (sector.weibullK ?? 2));
    const width = 360 / sectors.length;
    hours.push({ speedMps, fromDeg: wholeDegrees(sector.fromDeg + (random() - 0.5) * width) });
  }
  return withStorms(hours, random, isGrowing);
}

function withStorms(
  hours: readonly HourOfWind[],
  random: () => number,
  isGrowing: (hour: number) => boolean,
): readonly HourOfWind[] {
  const stormy = [...hours];
  let wantedRest = STORMS_REST;
  let wantedGrowing = STORMS_GROWING;
  while (wantedRest + wantedGrowing > 0) {
    const start = Math.floor(random() * (HOURS - 40));
    const lasting = 12 + Math.floor(random() * 18);
    const peakMps = 14 + 7 * random();
    const growing = isGrowing(start);
    if ((growing ? wantedGrowing : wantedRest) === 0) continue;
    if (growing) wantedGrowing--;
    else wantedRest--;
    for (let i = 0; i < lasting; i++) {
      const part = (i + 0.5) / lasting;
      const speedMps = peakMps * Math.sin(Math.PI * part) ** 0.7;
      if (speedMps > stormy[start + i].speedMps) {
        stormy[start + i] = { speedMps, fromDeg: wholeDegrees(212 + 105 * part + 10 * (random() - 0.5)) };
      }
    }
  }
  return stormy;
}
