import type { CareEffect } from '../scene/care-effect.ts';
import type { CareRecord } from '../site/records/care.ts';

/** Heights nearer than this are the same to whoever looks at a tree, m. */
const SAME_M = 0.05;

const differs = (a: number | null, b: number | null): boolean =>
  a === null || b === null ? a !== b : Math.abs(a - b) > SAME_M;

/**
 * What care does to a plant, in two or three sentences: its height in the shown year, how tall it gets from the first
 * cut on, and what does not show in a height.
 * @param year the shown one, after the base year; within those of the effect.
 */
export function careEffectWords(
  { cared, uncared }: CareEffect,
  care: readonly CareRecord[],
  { year, baseYear, length }: { year: number; baseYear: number; length: (lengthM: number) => string },
): string {
  const usual = cared.usual;
  const said = [heightIn(cared, uncared.usual[year], year, length)];
  const from = usual.findIndex((heightM, i) => differs(heightM, uncared.usual[i]));
  const later = from < 0 ? [] : usual.slice(from);
  const tallestM = Math.max(0, ...later.map((heightM) => heightM ?? 0));
  const last = usual.length - 1;
  if (tallestM > 0 && (uncared.usual[last] ?? 0) - tallestM > SAME_M)
    said.push(`From ${baseYear + from} to ${baseYear + last} it is at most ${length(tallestM)} tall.`);
  if (care.some(({ what }) => what === 'raiseCrown' || what === 'thin'))
    said.push(
      'Raising and thinning let light through and leave its height; a thinned crown is full again after five seasons.',
    );
  return said.join(' ');
}

function heightIn(
  { slow, usual, fast }: CareEffect['cared'],
  uncaredM: number | null,
  year: number,
  length: (lengthM: number) => string,
): string {
  const heightM = usual[year];
  if (heightM === null)
    return `In year ${year} ${uncaredM === null ? 'it is not there' : 'its place is empty'}.`;
  const [low, high] = [slow[year] ?? heightM, fast[year] ?? heightM];
  const band = high - low > SAME_M ? ` (${length(low)} to ${length(high)})` : '';
  const instead = differs(heightM, uncaredM)
    ? uncaredM === null
      ? ', where there would be none'
      : ` instead of ${length(uncaredM)}`
    : ', as without care';
  return `In year ${year} it is ${length(heightM)} tall${band}${instead}.`;
}
