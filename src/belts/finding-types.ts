export type FindingKind =
  | 'side'
  | 'too dense'
  | 'too open'
  | 'leafless'
  | 'too short'
  | 'gap'
  | 'raised foot'
  | 'one species'
  | 'darkens'
  | 'owner';

/** One thing that is wrong with a belt. */
export interface BeltFinding {
  readonly kind: FindingKind;
  /** A sentence with its numbers. */
  readonly says: string;
  /** What would cure it. */
  readonly cure: string;
  readonly source: string;
}

/** What a belt takes of a patch's sun over the growing season, from the light engine. */
export interface Darkened {
  readonly patch: string;
  readonly hoursADay: number;
  readonly seasonHours: number;
  /** Share of open light. */
  readonly lightShare: number;
}

/** How lengths are said to whoever reads. */
export interface FindingWords {
  readonly metres: (lengthM: number) => string;
}

const MOST_NAMED = 3;
/** Names in a sentence, the last ones counted where there are many. */
export const listed = (names: readonly string[]): string =>
  names.length > MOST_NAMED
    ? `${names.slice(0, MOST_NAMED - 1).join(', ')} and ${names.length - MOST_NAMED + 1} more`
    : names.length > 1
      ? `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`
      : (names[0] ?? '');
