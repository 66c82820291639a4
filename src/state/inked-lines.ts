import { siteDefaults } from '../site/records/site.ts';
import type { LightQuantity } from './light-period.ts';
import type { AppState, InkedValues, Picture } from './model.ts';

/** A value of the map at which a heavier line is drawn. */
export interface InkedLine {
  readonly value: number;
  /** Along the line: "40 %". */
  readonly label: string;
  /** In the legend: "40 % of open light, the light to keep". */
  readonly words: string;
}

/** More lines than this hide what is between them. */
export const MOST_LINES = 5;

interface Scale {
  readonly most: number;
  /** What a person types of one unit inside. */
  readonly typed: number;
  readonly unit: string;
  readonly label: (value: number) => string;
  readonly words: (value: number) => string;
}
const tidy = (value: number): string => String(Number(value.toFixed(1)));

export const INKED_SCALES: Readonly<Record<LightQuantity, Scale>> = {
  'light-share': {
    most: 1,
    typed: 100,
    unit: '%',
    label: (value) => `${tidy(value * 100)} %`,
    words: (value) => `${tidy(value * 100)} % of open light`,
  },
  'sun-hours': {
    most: 24,
    typed: 1,
    unit: 'h a day',
    label: (value) => `${tidy(value)} h`,
    words: (value) => `${tidy(value)} h of sun a day`,
  },
  'daily-light': {
    most: 80,
    typed: 1,
    unit: 'mol/m² a day',
    label: (value) => `${tidy(value)} mol`,
    words: (value) => `${tidy(value)} mol/m² a day`,
  },
};

export const isLightQuantity = (picture: Picture): picture is LightQuantity => picture in INKED_SCALES;

const isValue = (scale: Scale, value: unknown): value is number =>
  typeof value === 'number' && value > 0 && value <= scale.most;

/** True for what `inkedValues` may hold: an older or damaged store must not break the map. */
export const isInkedValues = (value: unknown): value is InkedValues =>
  typeof value === 'object' &&
  value !== null &&
  Object.entries(INKED_SCALES).every(([quantity, scale]) => {
    const values = (value as Record<string, unknown>)[quantity];
    return (
      values === null ||
      (Array.isArray(values) && values.length <= MOST_LINES && values.every((each) => isValue(scale, each)))
    );
  });

/** Why a typed value cannot be inked, in one sentence; null: it can. */
export function inkedValueProblem(
  quantity: LightQuantity,
  value: number,
  there: readonly number[],
): string | null {
  const scale = INKED_SCALES[quantity];
  if (!isValue(scale, value))
    return `${scale.label(value)} is no line of this map: expected a number above 0 and up to ${scale.label(scale.most)}.`;
  if (there.includes(value)) return `There is a line at ${scale.label(value)} already.`;
  if (there.length >= MOST_LINES)
    return `${MOST_LINES} lines are drawn already: take one away before you add another.`;
  return null;
}

type Needs = Pick<AppState, 'picture' | 'inkedValues'> & {
  readonly document: Pick<AppState['document'], 'site'>;
};

/** The lines of the map that is shown, lowest first; none where it does not show light. */
export function inkedLines({ picture, inkedValues, document }: Needs): readonly InkedLine[] {
  if (!isLightQuantity(picture)) return [];
  const { share } = document.site.lightToKeep ?? siteDefaults.lightToKeep;
  const scale = INKED_SCALES[picture];
  const values = inkedValues[picture] ?? (picture === 'light-share' && share > 0 ? [share] : []);
  return [...values]
    .sort((a, b) => a - b)
    .map((value) => ({
      value,
      label: scale.label(value),
      words:
        picture === 'light-share' && value === share
          ? `${scale.label(value)}, the light to keep`
          : scale.words(value),
    }));
}
