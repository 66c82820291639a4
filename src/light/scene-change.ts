/** Where two scenes differ: crowns and prisms that are the same at the start and at the end of the lists are left alone. */
import { CROWN_STRIDE, type CrownSet } from '../crowns/crown-set.ts';
import { PRISM_STRIDE, type PrismSet } from '../crowns/prism-set.ts';

/** Entries `from` up to but not including `to`. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

export interface ListChange {
  readonly removed: Range;
  readonly added: Range;
}

export const changedCrowns = (before: CrownSet, after: CrownSet): ListChange =>
  changedRange(before.count, after.count, (i, j) => sameCrown(before, i, after, j));

export const changedPrisms = (before: PrismSet, after: PrismSet): ListChange =>
  changedRange(before.count, after.count, (i, j) => samePrism(before, i, after, j));

function changedRange(before: number, after: number, same: (i: number, j: number) => boolean): ListChange {
  const least = Math.min(before, after);
  let from = 0;
  while (from < least && same(from, from)) from++;
  let kept = 0;
  while (kept < least - from && same(before - 1 - kept, after - 1 - kept)) kept++;
  return { removed: { from, to: before - kept }, added: { from, to: after - kept } };
}

function sameCrown(a: CrownSet, i: number, b: CrownSet, j: number): boolean {
  if (a.form[i] !== b.form[j] || a.leafClass[i] !== b.leafClass[j]) return false;
  for (let k = 0; k < CROWN_STRIDE; k++)
    if (a.values[i * CROWN_STRIDE + k] !== b.values[j * CROWN_STRIDE + k]) return false;
  return true;
}

function samePrism(a: PrismSet, i: number, b: PrismSet, j: number): boolean {
  const corners = a.ringStart[i + 1] - a.ringStart[i];
  if (corners !== b.ringStart[j + 1] - b.ringStart[j]) return false;
  if (a.solid[i] !== b.solid[j] || a.leafClass[i] !== b.leafClass[j]) return false;
  for (let k = 0; k < PRISM_STRIDE; k++)
    if (a.values[i * PRISM_STRIDE + k] !== b.values[j * PRISM_STRIDE + k]) return false;
  for (let k = 0; k < 2 * corners; k++)
    if (a.ringXY[2 * a.ringStart[i] + k] !== b.ringXY[2 * b.ringStart[j] + k]) return false;
  return true;
}

/**
 * A change widened to hold what was changed before, as long as it lies within it: what is in the hand stays in the
 * hand. Null where it lies elsewhere.
 * @param held where the things in hand lie in the list before
 * @param after length of the list after
 */
export function widenedTo(held: Range, before: number, after: number, change: ListChange): ListChange | null {
  const { removed } = change;
  if (!isNone(change) && (removed.from < held.from || removed.to > held.to)) return null;
  return { removed: held, added: { from: held.from, to: after - (before - held.to) } };
}

export const isEmpty = ({ from, to }: Range): boolean => from === to;
export const isSame = (a: Range, b: Range): boolean => a.from === b.from && a.to === b.to;
export const isNone = ({ removed, added }: ListChange): boolean => isEmpty(removed) && isEmpty(added);

/** Where the pieces of one thing lie, empty where it has none; null where others lie among them. */
export function rangeOf(thingOf: ArrayLike<number>, count: number, thing: number): Range | null {
  let from = 0;
  while (from < count && thingOf[from] !== thing) from++;
  let to = from;
  while (to < count && thingOf[to] === thing) to++;
  for (let i = to; i < count; i++) if (thingOf[i] === thing) return null;
  return { from, to };
}

/** Indices of a range, and of what a range leaves out of a list. */
export const inRange = ({ from, to }: Range): number[] =>
  Array.from({ length: to - from }, (_, k) => from + k);
export const outside = ({ from, to }: Range, count: number): number[] => [
  ...inRange({ from: 0, to: from }),
  ...inRange({ from: to, to: count }),
];
