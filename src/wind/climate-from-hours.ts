import type { WeatherTable } from '../sun/weather/weather-table.ts';
import { BadInputError } from '../units/bad-input.ts';
import { COMPASS_POINTS, SECTOR_WIDTH_DEG } from '../units/compass.ts';
import type { ClimateSector, WindClimate } from './shelter-types.ts';
import { DEFAULT_WEIBULL_K, weibullShape } from './weibull.ts';

const SECTORS = COMPASS_POINTS.length;
/** Below the lower limit of Beaufort 1 the air is calm. */
const CALM_BELOW_MPS = 0.3;
/** With fewer hours than this a sector takes the shape of its whole season. */
const HOURS_FOR_A_SHAPE = 30;

interface Tally {
  hours: number;
  run: number;
  squares: number;
}
interface SeasonTally {
  calmHours: number;
  /** Hours of wind whose direction is not known; shared out over the sectors. */
  undirectedHours: number;
  readonly all: Tally;
  readonly sectors: readonly Tally[];
}

const newTally = (): Tally => ({ hours: 0, run: 0, squares: 0 });
const newSeason = (): SeasonTally => ({
  calmHours: 0,
  undirectedHours: 0,
  all: newTally(),
  sectors: Array.from({ length: SECTORS }, newTally),
});

function count(tally: Tally, speedMps: number, hours: number): void {
  tally.hours += hours;
  tally.run += hours * speedMps;
  tally.squares += hours * speedMps * speedMps;
}

const meanOf = ({ run, hours }: Tally): number => (hours > 0 ? run / hours : 0);
function shapeOf(tally: Tally): number {
  const mean = meanOf(tally);
  if (!(mean > 0)) return DEFAULT_WEIBULL_K;
  return weibullShape(mean, Math.sqrt(Math.max(0, tally.squares / tally.hours - mean * mean)));
}

/** Directions are often reported in tens of degrees; then each stands for the ten degrees around it. */
function reportedStepDeg(directions: Float32Array): number {
  return directions.every((deg) => Number.isNaN(deg) || deg % 10 === 0) ? 10 : 0;
}

/** Sectors that share a reported direction, with their shares: tens of degrees would else favour some of sixteen. */
function sharedSectors(fromDeg: number, stepDeg: number): readonly (readonly [number, number])[] {
  const first = Math.round((fromDeg - stepDeg / 2) / SECTOR_WIDTH_DEG);
  const wrapped = ((first % SECTORS) + SECTORS) % SECTORS;
  const edgeDeg = (first + 0.5) * SECTOR_WIDTH_DEG;
  const over = fromDeg + stepDeg / 2 - edgeDeg;
  if (stepDeg === 0 || over <= 0) return [[wrapped, 1]];
  return [
    [wrapped, 1 - over / stepDeg],
    [(wrapped + 1) % SECTORS, over / stepDeg],
  ];
}

/** Index of a month and day in a year of 365 or 366 days; 29 February falls on the 28th in a common year. */
function dayIndex(month: number, day: number, days: number): number {
  const year = days === 366 ? 2024 : 2023;
  const kept = month === 2 && day === 29 && days === 365 ? 28 : day;
  return (Date.UTC(year, month - 1, kept) - Date.UTC(year, 0, 1)) / 86_400_000;
}

function finish(season: SeasonTally): WindClimate['growing'] {
  const windy = season.all.hours;
  const hours = windy + season.calmHours;
  const directed = windy - season.undirectedHours;
  const shape = shapeOf(season.all);
  const sectors = season.sectors.map(
    (tally, i): ClimateSector => ({
      fromDeg: COMPASS_POINTS[i].azimuthDeg,
      frequency: directed > 0 ? (tally.hours / directed) * (windy / hours) : 0,
      meanSpeedMps: meanOf(tally),
      weibullK: tally.hours >= HOURS_FOR_A_SHAPE ? shapeOf(tally) : shape,
    }),
  );
  return { calmShare: hours > 0 ? season.calmHours / hours : 1, sectors };
}

/**
 * Sixteen sectors for each season from hourly winds: frequency, mean speed, and Weibull shape by moments. 0 and 360
 * degrees are both north; calms have no direction.
 * @param growingDay 1 for each day of the growing season, 365 or 366 long; either hemisphere.
 * Throws BadInputError where the table has no wind with a direction.
 */
export function climateFromHours(table: WeatherTable, growingDay: Uint8Array): WindClimate {
  const step = reportedStepDeg(table.windFromDeg);
  const [growing, rest, year] = [newSeason(), newSeason(), newSeason()];
  for (let i = 0; i < table.hourCount; i++) {
    const speed = table.windSpeedMps[i];
    if (Number.isNaN(speed)) continue;
    const day = dayIndex(table.month[i], table.day[i], growingDay.length);
    const from = table.windFromDeg[i];
    for (const season of [year, growingDay[day] ? growing : rest]) {
      if (speed < CALM_BELOW_MPS) season.calmHours++;
      else {
        count(season.all, speed, 1);
        if (Number.isNaN(from)) season.undirectedHours++;
        else
          for (const [sector, share] of sharedSectors(from, step))
            count(season.sectors[sector], speed, share);
      }
    }
  }
  if (year.all.hours === year.undirectedHours) {
    throw new BadInputError('The weather file has no hour with both a wind speed and a direction.');
  }
  const orYear = (season: SeasonTally) => finish(season.all.hours > season.undirectedHours ? season : year);
  return { heightM: table.windHeightM, growing: orYear(growing), rest: orYear(rest) };
}

/** Mean speed of a season, calms included, m/s. */
export const seasonMeanMps = (season: WindClimate['growing']): number =>
  season.sectors.reduce((sum, { frequency, meanSpeedMps }) => sum + frequency * meanSpeedMps, 0);
