import type { CareRecord } from './records/care.ts';

/** How lengths and plants are said. */
export interface CareWording {
  readonly length: (lengthM: number) => string;
  /** Common name of a botanical one. */
  readonly plant: (botanicalName: string) => string;
}

type Done = Pick<CareRecord, 'what'> & {
  readonly heightM?: unknown;
  readonly share?: unknown;
  readonly species?: unknown;
};

/** What is done, without when: "Pollard at 2.5 m", "Fell and plant walnut". */
export function deedWords({ what, heightM, share, species }: Done, { length, plant }: CareWording): string {
  const at = typeof heightM === 'number' ? length(heightM) : '';
  switch (what) {
    case 'pollard':
      return `Pollard at ${at}`;
    case 'coppice':
      return 'Coppice';
    case 'raiseCrown':
      return `Raise the crown to ${at}`;
    case 'cutTo':
      return `Cut to ${at}`;
    case 'thin':
      return `Thin by ${typeof share === 'number' ? Math.round(share * 100) : 0} %`;
    case 'replace':
      return typeof species === 'string'
        ? `Fell and plant ${plant(species)}`
        : 'Fell and plant the same again';
    case 'die':
      return 'Dies or is felled';
  }
}

/** "in 2034, then every 7 years until 2060" */
function whenWords({ year, everyYears, lastYear }: CareRecord): string {
  if (everyYears === undefined) return `in ${year}`;
  const every = everyYears === 1 ? 'every year' : `every ${everyYears} years`;
  return `in ${year}, then ${every}${lastYear === undefined ? '' : ` until ${lastYear}`}`;
}

/** "Coppice in 2034, then every 7 years" */
export const careWords = (care: CareRecord, wording: CareWording): string =>
  `${deedWords(care, wording)} ${whenWords(care)}`;
