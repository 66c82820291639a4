import papaparse from 'papaparse';
import type { MaskedArea } from '../batch/area-masks.ts';
import { type FirstLastFigures, firstLastFigures } from '../batch/first-last-figures.ts';
import type { DayOfMonth, FirstLastSun } from '../light/first-last-sun-types.ts';
import { cellCount } from '../numeric/grid.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import { MONTHS } from '../units/months.ts';
import type { Raster, TextFile } from './finish.ts';

/** What `--first-last` adds to a run: rasters by month, a table by area and month, lines for a person to read. */
export interface FirstLastFound {
  readonly rasters: readonly Raster[];
  readonly texts: readonly TextFile[];
  readonly lines: readonly string[];
}

const JUNE = 5;
const DECEMBER = 11;

export function firstLastFound(
  result: FirstLastSun,
  areas: readonly MaskedArea[],
  timeZone: string,
): FirstLastFound {
  const figures = firstLastFigures(result, areas);
  const clock = (day: DayOfMonth, minute: number | null): string =>
    minute === null ? '' : clockOfUtc(day.midnightMs + minute * 60_000, timeZone).time;
  return {
    rasters: rasters(result),
    texts: [{ file: 'first-last-sun.csv', text: table(result, figures, clock) }],
    lines: figures
      .filter(({ month }) => month === JUNE || month === DECEMBER)
      .map(({ name, month, firstMin, lastMin, sunHours, shareWithout }) => {
        const day = result.days[month];
        const head = `${name}, ${day.dayOfMonth} ${MONTHS[month]}:`;
        if (firstMin === null) return `${head} no sun all day`;
        const without =
          shareWithout > 0 ? `; ${Math.round(shareWithout * 100)} % of its ground has none` : '';
        return `${head} first sun ${clock(day, firstMin)}, last ${clock(day, lastMin)} on half of its ground, ${(sunHours ?? 0).toFixed(1)} h of it in the mean${without}`;
      }),
  };
}

function rasters(result: FirstLastSun): Raster[] {
  const cells = cellCount(result.grid);
  const bands = (values: Float32Array, divisor: number, words: string) =>
    result.days.map(({ dayOfMonth }, month) => ({
      name: `${dayOfMonth} ${MONTHS[month]}, ${words}`,
      values: values.subarray(month * cells, (month + 1) * cells).map((value) => value / divisor),
    }));
  return [
    { file: 'first-sun.tif', bands: bands(result.firstMin, 60, 'first sun, hours after midnight') },
    { file: 'last-sun.tif', bands: bands(result.lastMin, 60, 'last sun, hours after midnight') },
    { file: 'day-sun-hours.tif', bands: bands(result.sunHours, 1, 'hours with half of the beam or more') },
  ];
}

function table(
  { days }: FirstLastSun,
  figures: readonly FirstLastFigures[],
  clock: (day: DayOfMonth, minute: number | null) => string,
): string {
  const rows = figures.map(({ id, name, month, firstMin, lastMin, sunHours, shareWithout }) => ({
    id,
    name,
    day: `${days[month].dayOfMonth} ${MONTHS[month]}`,
    sunrise: clock(days[month], days[month].riseMin),
    firstSunMedian: clock(days[month], firstMin),
    lastSunMedian: clock(days[month], lastMin),
    sunset: clock(days[month], days[month].setMin),
    sunHoursMean: sunHours === null ? '' : sunHours.toFixed(2),
    shareWithoutSun: shareWithout.toFixed(3),
    stepMin: days[month].stepMin.toFixed(1),
  }));
  return `${papaparse.unparse(rows, { newline: '\n' })}\n`;
}
