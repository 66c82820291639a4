/** What people do to a woody plant in some winter, and what that leaves standing. */

/**
 * `year` is the calendar year whose growing season follows the work. Heights in metres above the ground.
 * `pollard` takes the whole crown off at a height; `coppice` takes all down to the stump; `raiseCrown` takes the
 * branches off below a height; `cutTo` keeps the crown in proportion at a height; `thin` takes a share of the foliage
 * evenly out of the crown; `replace` fells it and plants another in its place; `die` is the end of it, whether it dies
 * or is felled.
 */
export interface CareEvent {
  readonly what: CareKind;
  readonly year: number;
  /** Again after so many years each; absent: once. */
  readonly everyYears?: number;
  /** The last year in which a repeated one may be done. */
  readonly lastYear?: number;
  /** Of `pollard`, `raiseCrown` and `cutTo`. */
  readonly heightM?: number;
  /** Of `thin`: how much of the foliage is taken, 0 to 1. */
  readonly share?: number;
  /** Of `replace`: botanical name of what follows; absent: the same as stood there. */
  readonly species?: string;
}

export const CARE_KINDS = ['pollard', 'coppice', 'raiseCrown', 'cutTo', 'thin', 'replace', 'die'] as const;
export type CareKind = (typeof CARE_KINDS)[number];

/** One time at which something is done. */
export type CareTime = Omit<CareEvent, 'everyYears' | 'lastYear'>;

/** What is done in the same winter is done in this order: first what ends a plant, then the largest cut. */
const ORDER: readonly CareKind[] = ['die', 'replace', 'coppice', 'pollard', 'cutTo', 'raiseCrown', 'thin'];

/** All that is done up to a calendar year, in the order in which it is done; repeated work once for each time. */
export function careUpTo(care: readonly CareEvent[] | undefined, calendarYear: number): CareTime[] {
  const times: CareTime[] = [];
  for (const { everyYears, lastYear, ...first } of care ?? []) {
    const end = Math.min(calendarYear, lastYear ?? calendarYear);
    const step = everyYears ?? Number.POSITIVE_INFINITY;
    for (let year = first.year; year <= end; year += step) times.push({ ...first, year });
  }
  return times.sort((a, b) => a.year - b.year || ORDER.indexOf(a.what) - ORDER.indexOf(b.what));
}
