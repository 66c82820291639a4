import type { GrowthMoment } from './options.ts';

/** What about a site nobody knows, and that decides its light and shelter. */
export const CAUSES = ['crown-spread', 'growth', 'foliage'] as const;
export type Cause = (typeof CAUSES)[number];

export const SCENE_ENDS = [
  'wide-crowns',
  'narrow-crowns',
  'slow-growth',
  'fast-growth',
  'dense-foliage',
  'open-foliage',
] as const;
/** One end of what is not known of one cause, everything else being as expected. */
export type SceneEnd = (typeof SCENE_ENDS)[number];

export const ENDS_OF_CAUSE: Readonly<Record<Cause, readonly [SceneEnd, SceneEnd]>> = {
  'crown-spread': ['wide-crowns', 'narrow-crowns'],
  growth: ['slow-growth', 'fast-growth'],
  foliage: ['dense-foliage', 'open-foliage'],
};

/** Crown radii of single trees at the ends: a fifth to either side (our convention: allometry scatters about so much). */
const CROWN_SPREAD_FACTOR = { wide: 1.2, narrow: 0.8 } as const;

const DEPARTURES: Readonly<
  Record<SceneEnd, Partial<Pick<GrowthMoment, 'pace' | 'crownSpreadFactor' | 'foliage'>>>
> = {
  'wide-crowns': { crownSpreadFactor: CROWN_SPREAD_FACTOR.wide },
  'narrow-crowns': { crownSpreadFactor: CROWN_SPREAD_FACTOR.narrow },
  'slow-growth': { pace: 'slow' },
  'fast-growth': { pace: 'fast' },
  'dense-foliage': { foliage: 'dense' },
  'open-foliage': { foliage: 'open' },
};

/** The same moment with one thing at an end of what is not known of it; null: as it was. */
export const atEnd = <Moment extends GrowthMoment>(moment: Moment, end: SceneEnd | null): Moment =>
  end === null ? moment : { ...moment, ...DEPARTURES[end] };
