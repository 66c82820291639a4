import { CARE_CAUTIONS } from '../plants/care-cautions.ts';
import { findSpecies } from '../plants/find-species.ts';
import type { CareJob } from '../scene/care-list.ts';
import { type CareWording, deedWords } from '../site/care-words.ts';
import type { SiteRecord } from '../site/records/site.ts';
import { csvCell } from './csv-cell.ts';

/** What is to be done in some winters. */
export interface CareAnswer {
  readonly site: SiteRecord;
  readonly layout: string | null;
  readonly fromYear: number;
  readonly toYear: number;
  /** South of the equator a winter lies within one calendar year. */
  readonly southern: boolean;
  readonly jobs: readonly CareJob[];
}

const metres = (lengthM: number): string => `${Number(lengthM.toFixed(1))} m`;
const wordingOf = (site: SiteRecord): CareWording => ({
  length: metres,
  plant: (name) => findSpecies(name, site.species)?.commonName ?? name,
});

/** "winter 2033/34" before the season of 2034, "winter 2034" south of the equator. */
const winterWords = (year: number, southern: boolean): string =>
  southern ? `winter ${year}` : `winter ${year - 1}/${String(year % 100).padStart(2, '0')}`;

/** Lists by winter, plants with the same work in one line. */
export function careText(answer: CareAnswer, csv: string | null): string {
  const { site, fromYear, toYear, southern, jobs } = answer;
  const wording = wordingOf(site);
  const span = `${winterWords(fromYear, southern)} to ${winterWords(toYear, southern)}`;
  const lines = [`Care of the plants of ${site.name}, ${span}`];
  if (jobs.length === 0) lines.push('Nothing is to be done.');
  for (const year of new Set(jobs.map((job) => job.year))) {
    const winter = winterWords(year, southern);
    lines.push(`${winter.charAt(0).toUpperCase()}${winter.slice(1)}, before the season of ${year}`);
    const alike = new Map<string, string[]>();
    for (const job of jobs.filter((each) => each.year === year)) {
      const words = [deedWords(job, wording), ...notesOf(job)].join('\n');
      alike.set(words, [...(alike.get(words) ?? []), plantWords(job)]);
    }
    for (const [words, plants] of alike) {
      const [deed, ...notes] = words.split('\n');
      lines.push(`  ${deed}: ${plants.join(', ')}`, ...notes.map((note) => `    Mind: ${note}`));
    }
  }
  if (jobs.length > 0) lines.push('Heights are those expected at usual growth.', ...CARE_CAUTIONS);
  if (csv) lines.push(`Written: ${csv}`);
  return `${lines.join('\n')}\n`;
}

const plantWords = ({ label, heightBeforeM }: CareJob): string =>
  heightBeforeM === null ? label : `${label} (${metres(heightBeforeM)})`;

const notesOf = ({ needless, cautions }: CareJob): string[] =>
  needless ? ['It is lower than that by then: nothing is cut.'] : [...cautions];

/** The same as plain data: calendar years, metres, shares. */
export function careJson({ site, layout, fromYear, toYear, jobs }: CareAnswer): string {
  const answer = { site: site.name, layout, fromYear, toYear, jobs, cautions: CARE_CAUTIONS };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

const COLUMNS = [
  'year',
  'id',
  'kind',
  'label',
  'what',
  'heightM',
  'share',
  'species',
  'heightBeforeM',
  'notes',
] as const;

/** One line a piece of work, columns named as in the JSON (RFC 4180). */
export function careCsv({ jobs }: CareAnswer): string {
  const rows = jobs.map((job) => {
    const cells = { ...job, notes: notesOf(job).join(' ') };
    return COLUMNS.map((column) => {
      const value = cells[column];
      return csvCell(typeof value === 'number' ? Number(value.toFixed(3)) : value);
    }).join(',');
  });
  return [COLUMNS.join(','), ...rows].map((row) => `${row}\r\n`).join('');
}
