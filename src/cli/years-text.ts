import type { DarkTurn } from '../jobs/run-darkeners.ts';
import type { FeatureId } from '../site/document.ts';
import type { SiteRecord } from '../site/records/site.ts';
import { shelterEffectOf } from '../years/shelter-effect.ts';
import type { YearsLook } from '../years/years-look-types.ts';
import { yearsAnswer } from '../years/years-words.ts';
import { csvCell } from './csv-cell.ts';

export interface YearsFound {
  readonly site: SiteRecord;
  readonly layout: string | null;
  readonly look: YearsLook;
  readonly patches: readonly { readonly id: FeatureId; readonly name: string; readonly years: DarkTurn }[];
}

const TOLD_EVERY = 5;
const percent = (share: number): string => (Number.isNaN(share) ? '–' : `${Math.round(share * 100)} %`);

/** The answer, a table of every fifth year, patches and crops, as they are read. */
export function yearsText({ site, layout, look, patches }: YearsFound, csvFile: string | null): string {
  const { figure, sentence } = yearsAnswer(look, patches);
  const { usual, most } = shelterEffectOf(site);
  const head = ['year', 'in shelter', 'wind cut', 'light', 'canopy', 'bearing'];
  const rows = look.years.flatMap((year, k) => {
    if (year % TOLD_EVERY !== 0) return [];
    const { shelteredShare, meanWindCut, meanLightShare, canopyShare } = look.figures[k];
    const shares = [shelteredShare, meanWindCut, meanLightShare, canopyShare].map(percent);
    const bearing = look.crops ? `${look.crops.bearing.usual[year]} of ${look.crops.trees}` : '–';
    return [[`${year} (${site.baseYear + year})`, ...shares, bearing]];
  });
  const widths = head.map((word, c) => Math.max(word.length, ...rows.map((row) => row[c].length)));
  const line = (cells: readonly string[]) =>
    `  ${cells.map((cell, c) => (c === 0 ? cell.padEnd(widths[c]) : cell.padStart(widths[c]))).join('  ')}`;
  const reckoned =
    usual === 1
      ? `Shelter is not reckoned to speed growth; the fast end of the band has it do so by ${percent(most - 1)} at most.`
      : `In full shelter plants are reckoned to grow ${percent(usual - 1)} faster than in the open; the fast end of the band has ${percent(most - 1)}.`;
  return [
    `${site.name}${layout ? `, ${layout}` : ''}: ${look.fieldName} from year 0 to ${look.years[look.years.length - 1]}`,
    `${figure}: ${sentence}`,
    reckoned,
    '',
    line(head),
    ...rows.map(line),
    ...(csvFile ? ['', `Every year is in ${csvFile}.`] : []),
    '',
  ].join('\n');
}

/** One line a year, shares 0 to 1, with the slow and fast ends where they were worked out. */
export function yearsCsv({ site, look }: YearsFound): string {
  const head = [
    'year',
    'calendarYear',
    'shelteredShare',
    'shelteredShareSlow',
    'shelteredShareFast',
    'meanWindCut',
    'meanLightShare',
    'meanDirectHours',
    'canopyShare',
    'bearingTrees',
  ];
  const rows = look.years.map((year, k) => {
    const figures = look.figures[k];
    const at = look.band?.years.indexOf(year) ?? -1;
    return [
      year,
      site.baseYear + year,
      figures.shelteredShare,
      at < 0 ? null : look.band?.slow[at].shelteredShare,
      at < 0 ? null : look.band?.fast[at].shelteredShare,
      figures.meanWindCut,
      figures.meanLightShare,
      figures.meanDirectHours,
      figures.canopyShare,
      look.crops?.bearing.usual[year] ?? null,
    ].map((value) => (typeof value === 'number' && !Number.isInteger(value) ? value.toFixed(4) : value));
  });
  return `${[head, ...rows].map((row) => row.map(csvCell).join(',')).join('\r\n')}\r\n`;
}

/** The same as data; shares to four decimals. */
export function yearsJson({ site, layout, look, patches }: YearsFound): string {
  const { figure, sentence } = yearsAnswer(look, patches);
  const rounded = (_key: string, value: unknown) =>
    typeof value === 'number' && !Number.isInteger(value) ? Number(value.toFixed(4)) : value;
  const answer = {
    site: site.name,
    layout,
    field: { id: look.fieldId, name: look.fieldName },
    baseYear: site.baseYear,
    shelterEffect: shelterEffectOf(site),
    answer: `${figure}: ${sentence}`,
    cellM: look.grid.cellM,
    years: look.years.map((year, k) => ({ year, ...look.figures[k] })),
    band: look.band,
    crops: look.crops,
    patches: patches.map(({ id, name, years }) => ({ id, name, ...years })),
  };
  return `${JSON.stringify(answer, rounded, 2)}\n`;
}
