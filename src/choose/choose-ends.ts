import { type Cause, ENDS_OF_CAUSE, type SceneEnd } from '../scene/ends.ts';

/** The wind from a little further round, anticlockwise and clockwise. */
export const WIND_ENDS = ['backed-wind', 'veered-wind'] as const;
export type ChooseEnd = SceneEnd | (typeof WIND_ENDS)[number];
export type ChooseCause = Cause | 'wind';

/**
 * By how much winds a few kilometres away differ in direction from those of the site's own record, degrees. Common
 * practice, no source.
 */
const WIND_TURN_DEG = 15;
export const windTurnDeg = (end: ChooseEnd | null): number =>
  end === 'backed-wind' ? -WIND_TURN_DEG : end === 'veered-wind' ? WIND_TURN_DEG : 0;

/** What is not known, each with both of its ends. */
export const ENDS_OF_CHOOSE_CAUSE: Readonly<Record<ChooseCause, readonly [ChooseEnd, ChooseEnd]>> = {
  ...ENDS_OF_CAUSE,
  wind: WIND_ENDS,
};
export const CHOOSE_CAUSES = Object.keys(ENDS_OF_CHOOSE_CAUSE) as readonly ChooseCause[];
export const CHOOSE_ENDS: readonly ChooseEnd[] = CHOOSE_CAUSES.flatMap(
  (cause) => ENDS_OF_CHOOSE_CAUSE[cause],
);
