import { isInkedValues } from './inked-lines.ts';
import type { AppState } from './model.ts';

type Check = (value: unknown) => boolean;
const oneOf =
  (...values: readonly unknown[]): Check =>
  (value) =>
    values.includes(value);

/** The choices of view that are kept, each with what it may be: an older or damaged store must not break the screen. */
export const KEPT_VIEW = {
  step: oneOf('ground', 'shelter', 'trees', 'light'),
  picture: oneOf(
    'plain',
    'light-share',
    'sun-hours',
    'daily-light',
    'first-sun',
    'last-sun',
    'wind-cut',
    'slope',
    'cold-air',
  ),
  year: (value) => Number.isInteger(value) && Number(value) >= 0 && Number(value) <= 40,
  period: (value) => value === 'season' || value === 'year' || oneOf(...Array(12).keys())(value),
  layer: oneOf('ground', 'shrub'),
  inkedValues: isInkedValues,
  layout: (value) => value === null || typeof value === 'string',
  unitSystem: oneOf('metric', 'imperial'),
  theme: oneOf('as-device', 'light', 'dark'),
  cellWantedM: (value) => value === null || (typeof value === 'number' && value >= 0.25),
} as const satisfies Partial<Record<keyof AppState, Check>>;
export type KeptName = keyof typeof KEPT_VIEW;
export const KEPT_NAMES = Object.keys(KEPT_VIEW) as readonly KeptName[];

/** What of the kept choices can be used. */
export const keptView = (
  kept: Readonly<Record<string, unknown>>,
  names: readonly KeptName[] = KEPT_NAMES,
): Partial<AppState> =>
  Object.fromEntries(
    names.filter((name) => name in kept && KEPT_VIEW[name](kept[name])).map((name) => [name, kept[name]]),
  );
