import { unitOf } from '../sun/weather/wind-columns.ts';
import { BadInputError } from '../units/bad-input.ts';
import { compassPoint } from '../units/compass.ts';
import type { SectorOfSite } from './climate-from-record.ts';

type Season = 'growing' | 'rest' | undefined;

/** A table of winds as the site file holds it, with what a person should know of how it was read. */
export interface TabledWind {
  readonly sectors: readonly SectorOfSite[];
  readonly calmShare: number;
  readonly calmShareBySeason: { readonly growing: number; readonly rest: number } | null;
  readonly notes: readonly string[];
}

interface Row {
  readonly line: number;
  /** Null: the calms. */
  readonly fromDeg: number | null;
  readonly share: number;
  readonly speedMps: number;
  readonly season: Season;
}

const SEASONS: readonly (readonly [RegExp, Season])[] = [
  [/^(|year|all|whole year|all year)$/, undefined],
  [/^(growing|growing season|summer|in leaf)$/, 'growing'],
  [/^(rest|rest of the year|winter|dormant|leafless)$/, 'rest'],
];
const NUMBER = String.raw`(\d+(?:\.\d+)?|\.\d+)`;
const WIND = new RegExp(
  `^([a-z][a-z -]*?|${NUMBER} ?°?) +${NUMBER} ?(%?) +${NUMBER} ?(m/s|mps|km/h|kmh|kph|kn|kt|kts|knots|mph|ft/s)?(?: +([a-z ]+))?$`,
);
const CALM = new RegExp(String.raw`^calms? +${NUMBER} ?(%?)(?: +0(?:\.0+)?)?(?: +([a-z ]+))?$`);
/** Shares of a season that add to more than this were written as percent. */
const PERCENT_ABOVE = 1.5;
const ROUNDING = 0.02;

/** One line with its cells parted by single spaces and its decimals by points. */
function plainLine(text: string, commasPart: boolean): string {
  const parted = commasPart
    ? text.replaceAll(',', ' ')
    : text.replaceAll(/[\t;|]/g, ' ').replaceAll(/(\d),(\d)/g, '$1.$2');
  return parted.replaceAll(/\s+/g, ' ').trim().toLowerCase();
}

function seasonOf(words: string | undefined, line: number): Season {
  const found = SEASONS.find(([pattern]) => pattern.test((words ?? '').trim()));
  if (found) return found[1];
  throw new BadInputError(
    `Line ${line} ends with "${words}"; nothing, "growing" or "rest" (of the year) is expected.`,
  );
}

function directionOf(text: string, line: number): number {
  const deg = Number(text.replace('°', ''));
  if (Number.isNaN(deg)) {
    try {
      return compassPoint(text).azimuthDeg;
    } catch {
      throw new BadInputError(
        `Line ${line} begins with "${text}"; a direction such as SW, south-west or 225 is expected.`,
      );
    }
  }
  if (deg <= 360) return deg % 360;
  throw new BadInputError(`Line ${line} has the direction ${deg}; 0 to 360 degrees are expected.`);
}

function rowOf(text: string, line: number, mpsAUnit: number): { row: Row; percent: boolean } {
  const calm = CALM.exec(text);
  if (calm) {
    const row = {
      line,
      fromDeg: null,
      share: Number(calm[1]),
      speedMps: 0,
      season: seasonOf(calm[3], line),
    };
    return { row, percent: calm[2] === '%' };
  }
  const wind = WIND.exec(text);
  if (!wind)
    throw new BadInputError(
      `Line ${line} is "${text.slice(0, 40)}"; a direction, a share of the hours and a mean speed are expected, such as "SW 18 5.2".`,
    );
  const speedMps = Number(wind[5]) * (wind[6] ? (unitOf(wind[6]) ?? 1) : mpsAUnit);
  if (speedMps > 60)
    throw new BadInputError(
      `Line ${line} has a mean of ${Math.round(speedMps)} m/s; no place is that windy: check the unit.`,
    );
  const row = {
    line,
    fromDeg: directionOf(wind[1], line),
    share: Number(wind[3]),
    speedMps,
    season: seasonOf(wind[7], line),
  };
  return { row, percent: wind[4] === '%' };
}

/**
 * Reads a small table of winds as it is typed or pasted: a line a direction, with the share of the hours (percent or
 * 0 to 1), the mean speed and, where the seasons differ, "growing" or "rest"; "calm" may stand for a direction. Cells
 * are parted by tabs, semicolons, commas or spaces; a line of headings may name the unit.
 * @param mpsAUnit metres a second in one of the speeds' unit, where the table does not name it.
 * Throws BadInputError with the line.
 */
export function windFromTable(text: string, mpsAUnit: number): TabledWind {
  const lines = text.split(/\r\n|\r|\n/);
  const commasPart = !/[\t;|]/.test(text) && lines.some((line) => (line.match(/,/g) ?? []).length >= 2);
  const rows: Row[] = [];
  let unit = mpsAUnit;
  let percent = false;
  lines.forEach((raw, i) => {
    const line = plainLine(raw, commasPart);
    if (line === '') return;
    if (rows.length === 0 && !/\d(?! ?°)/.test(line.replaceAll(/\d+ ?m\b/g, ''))) {
      unit = unitOf(line) ?? unit;
      percent ||= line.includes('%');
      return;
    }
    const read = rowOf(line, i + 1, unit);
    percent ||= read.percent;
    rows.push(read.row);
  });
  if (!rows.some(({ fromDeg, share, speedMps }) => fromDeg !== null && share > 0 && speedMps > 0))
    throw new BadInputError('No wind is in the table yet; a line such as "SW 18 5.2" is expected.');
  return inShares(rows, percent);
}

function inShares(rows: readonly Row[], percent: boolean): TabledWind {
  const ofSeason = (season: 'growing' | 'rest') =>
    rows.filter((row) => row.season === undefined || row.season === season);
  const totalOf = (some: readonly Row[]) => some.reduce((sum, { share }) => sum + share, 0);
  const most = Math.max(totalOf(ofSeason('growing')), totalOf(ofSeason('rest')));
  const scale = percent || most > PERCENT_ABOVE ? 0.01 : 1;
  const notes: string[] = [];
  const calmOf = (season: 'growing' | 'rest') => {
    const own = ofSeason(season);
    const total = totalOf(own) * scale;
    if (total > 0 && Math.abs(total - 1) > ROUNDING)
      notes.push(
        `The shares of ${season === 'growing' ? 'the growing season' : 'the rest of the year'} add to ${Math.round(total * 100)} %; they are taken as parts of all its hours.`,
      );
    const calms = totalOf(own.filter(({ fromDeg }) => fromDeg === null)) * scale;
    return total > 0 ? Number((calms / total).toFixed(4)) : 0;
  };
  const [growing, rest] = [calmOf('growing'), calmOf('rest')];
  const sectors = rows.flatMap(({ fromDeg, share, speedMps, season }): SectorOfSite[] =>
    fromDeg === null
      ? []
      : [
          {
            fromDeg,
            frequency: Number((share * scale).toFixed(5)),
            meanSpeedMps: Number(speedMps.toFixed(2)),
            ...(season ? { season } : {}),
          },
        ],
  );
  return {
    sectors,
    calmShare: growing === rest ? growing : 0,
    calmShareBySeason: growing === rest ? null : { growing, rest },
    notes: [...new Set(notes)],
  };
}
