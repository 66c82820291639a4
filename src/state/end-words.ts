import type { CauseChange, EndChange } from '../jobs/run-ends-causes.ts';
import type { SceneEnd } from '../scene/ends.ts';
import { formatHours, formatShare } from './format-measure.ts';
import type { Picture } from './model.ts';
import { isSunTime } from './sun-times.ts';

/** An end in words: what it supposes, and what a map drawn at it is drawn with. */
const END_WORDS: Readonly<Record<SceneEnd, { readonly supposed: string; readonly drawnWith: string }>> = {
  'wide-crowns': { supposed: 'If crowns grow a fifth wider', drawnWith: 'crowns a fifth wider' },
  'narrow-crowns': { supposed: 'If crowns grow a fifth narrower', drawnWith: 'crowns a fifth narrower' },
  'slow-growth': { supposed: 'If everything grows slowly', drawnWith: 'slow growth' },
  'fast-growth': { supposed: 'If everything grows fast', drawnWith: 'fast growth' },
  'dense-foliage': { supposed: 'If foliage is denser', drawnWith: 'denser foliage' },
  'open-foliage': { supposed: 'If foliage is more open', drawnWith: 'more open foliage' },
};
export const supposing = (end: SceneEnd): string => END_WORDS[end].supposed;

/** The end beside its cause, as a button says it. */
export const END_NAMES: Readonly<Record<SceneEnd, string>> = {
  'wide-crowns': 'a fifth wider',
  'narrow-crowns': 'a fifth narrower',
  'slow-growth': 'slow',
  'fast-growth': 'fast',
  'dense-foliage': 'denser',
  'open-foliage': 'more open',
};
export const CAUSE_NAMES: Readonly<Record<CauseChange['cause'], string>> = {
  'crown-spread': 'Crown spread',
  growth: 'Growth',
  foliage: 'Foliage',
  engine: 'The sums themselves',
};

/** What the screen supposes in place of what is expected: "crowns a fifth wider"; null: nothing. */
export const supposedInWords = (shownEnd: SceneEnd | null): string | null =>
  shownEnd && END_WORDS[shownEnd].drawnWith;

/** What an answer assumes, and what the screen supposes besides. */
export function withSupposed(assumed: readonly string[], shownEnd: SceneEnd | null): readonly string[] {
  const supposed = supposedInWords(shownEnd);
  return supposed ? [...assumed, supposed] : assumed;
}

export const HARDLY = 'hardly any change';

/** What an end makes of a map's mean: "12 % darker"; of the wind "cut by 31 % instead of 39 %". */
export function changeInWords(picture: Picture, { usual, mean }: EndChange): string {
  if (picture === 'wind-cut') {
    const [before, after] = [formatShare(usual), formatShare(mean)];
    return before === after ? HARDLY : `cut by ${after} instead of ${before}`;
  }
  if (isSunTime(picture)) {
    const minutes = Math.round((mean - usual) * 60);
    return minutes === 0 ? HARDLY : `${Math.abs(minutes)} min ${minutes < 0 ? 'earlier' : 'later'}`;
  }
  const percent = Math.round((mean / usual - 1) * 100);
  if (percent === 0 || !Number.isFinite(percent)) return HARDLY;
  const [less, more] = picture === 'sun-hours' ? ['less sun', 'more sun'] : ['darker', 'lighter'];
  return `${Math.abs(percent)} % ${percent < 0 ? less : more}`;
}

/** The same for a narrow place: "-12 %"; of the wind what it is cut by, "31 %". */
export function changeInFigures(picture: Picture, { usual, mean }: EndChange): string {
  if (picture === 'wind-cut') return formatShare(mean);
  if (isSunTime(picture)) return signed(Math.round((mean - usual) * 60), 'min');
  const percent = Math.round((mean / usual - 1) * 100);
  return signed(Number.isFinite(percent) ? percent : 0, '%');
}

const signed = (value: number, unit: string): string =>
  `${value === 0 ? '±' : value < 0 ? '−' : '+'}${Math.abs(value)} ${unit}`;

/** A difference of two values of a map in its own unit, however small. */
export function differenceInWords(picture: Picture, difference: number): string {
  const figures = differenceInFigures(picture, difference);
  if (isSunTime(picture)) return figures;
  if (picture === 'sun-hours' || picture === 'daily-light') return `${figures} a day`;
  return `${figures} of ${picture === 'wind-cut' ? 'the open wind' : 'open light'}`;
}

/** The same where a heading says what of. */
export function differenceInFigures(picture: Picture, difference: number): string {
  if (picture === 'sun-hours') return formatHours(difference);
  if (isSunTime(picture)) return `${Math.round(difference * 60)} min`;
  if (picture === 'daily-light') return `${difference.toFixed(1)} mol/m²`;
  const percent = difference * 100;
  return `${percent < 1 ? percent.toFixed(1) : Math.round(percent)} %`;
}
