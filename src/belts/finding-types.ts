export type FindingKind =
  | 'side'
  | 'too dense'
  | 'too open'
  | 'leafless'
  | 'too short'
  | 'gap'
  | 'raised foot'
  | 'one species'
  | 'one genus'
  | 'darkens'
  | 'owner';

/** What each is called above its sentence. */
export const FINDING_NAMES: Readonly<Record<FindingKind, string>> = {
  side: 'Wrong side',
  'too dense': 'Too dense',
  'too open': 'Too open',
  leafless: 'Leafless in the windy season',
  'too short': 'Too short',
  gap: 'A gap',
  'raised foot': 'A raised foot',
  'one species': 'One species only',
  'one genus': 'One genus only',
  darkens: 'Darkens patches',
  owner: 'No owner',
};

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
