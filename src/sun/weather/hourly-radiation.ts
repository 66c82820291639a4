import { BadInputError } from '../../units/bad-input.ts';
import { diffuseShare } from '../diffuse-share.ts';
import { sunPosition } from '../position.ts';
import type { HourlyRadiation } from '../sky-climate.ts';
import type { WeatherTable } from './weather-table.ts';

const HOUR_MS = 3_600_000;
/** A file with more hours than this share without radiation says nothing about the year. */
const MOST_MISSING_SHARE = 0.1;
/** Solar constant on a horizontal plane under an overhead sun, W m-2 (FAO-56: 0.082 MJ m-2 min-1). */
const SOLAR_CONSTANT_WM2 = 1367;

export const hasRadiation = (table: WeatherTable): boolean => table.globalWm2.some((value) => value > 0);

const isLeap = (year: number): boolean => new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1;

/** The nearest hour, at the same time of day, that has a value; a day before, a day after, two days before and so on. */
function borrowed(values: Float32Array, hour: number): number {
  for (let days = 1; days <= 30; days++) {
    for (const other of [hour - 24 * days, hour + 24 * days]) {
      if (other >= 0 && other < values.length && !Number.isNaN(values[other])) return values[other];
    }
  }
  return 0;
}

/**
 * The radiation of a weather table placed in a calendar year: each hour at its middle, in UTC. A leap day that the
 * file lacks repeats 28 February; one that the year lacks is left out. Missing hours borrow the nearest day's; missing
 * diffuse light is split off by Erbs. Of several years the mean.
 * Throws BadInputError where the table has no radiation to speak of.
 */
export function hourlyRadiation(table: WeatherTable, calendarYear: number): HourlyRadiation {
  const missing = table.globalWm2.reduce((count, value) => count + Number(Number.isNaN(value)), 0);
  if (missing > MOST_MISSING_SHARE * table.hourCount || !hasRadiation(table)) {
    throw new BadInputError(
      `The weather file lacks global radiation in ${missing} of its ${table.hourCount} hours; light needs nine in ten.`,
    );
  }
  const hours: PlacedHour[] = [];
  const leap = isLeap(calendarYear);
  const fileHasLeapDay = table.month.some((month, i) => month === 2 && table.day[i] === 29);
  for (let i = 0; i < table.hourCount; i++) {
    const [month, day] = [table.month[i], table.day[i]];
    if (month === 2 && day === 29 && !leap) continue;
    const global = Number.isNaN(table.globalWm2[i]) ? borrowed(table.globalWm2, i) : table.globalWm2[i];
    const days = leap && !fileHasLeapDay && month === 2 && day === 28 ? [28, 29] : [day];
    for (const placed of days) {
      const midMs =
        Date.UTC(calendarYear, month - 1, placed) + (table.hourEnd[i] - 0.5 - table.utcOffsetHours) * HOUR_MS;
      const diffuse = Number.isNaN(table.diffuseWm2[i])
        ? splitOff(table, midMs, global)
        : table.diffuseWm2[i];
      hours.push({ midMs, global, diffuse: Math.min(global, diffuse) });
    }
  }
  const placed = meanOfYears(hours.sort((a, b) => a.midMs - b.midMs));
  return {
    midHourMs: Float64Array.from(placed, (hour) => hour.midMs),
    globalWm2: Float32Array.from(placed, (hour) => hour.global),
    diffuseWm2: Float32Array.from(placed, (hour) => hour.diffuse),
  };
}

interface PlacedHour {
  readonly midMs: number;
  readonly global: number;
  readonly diffuse: number;
}

/** Hours of several years that fall on the same hour count as their mean: light adds up, so the year comes out as theirs. */
function meanOfYears(hours: readonly PlacedHour[]): PlacedHour[] {
  const placed: PlacedHour[] = [];
  for (let first = 0; first < hours.length; ) {
    const { midMs } = hours[first];
    let [past, global, diffuse] = [first, 0, 0];
    for (; past < hours.length && hours[past].midMs === midMs; past++) {
      global += hours[past].global;
      diffuse += hours[past].diffuse;
    }
    const years = past - first;
    placed.push({ midMs, global: global / years, diffuse: diffuse / years });
    first = past;
  }
  return placed;
}

function splitOff(table: WeatherTable, midMs: number, globalWm2: number): number {
  if (table.latDeg === null || table.lonDeg === null || globalWm2 === 0) return globalWm2;
  const { altitudeRad } = sunPosition(midMs, table.latDeg, table.lonDeg);
  const above = SOLAR_CONSTANT_WM2 * Math.sin(altitudeRad);
  return above > 0 ? globalWm2 * diffuseShare(Math.min(1, globalWm2 / above)) : globalWm2;
}
