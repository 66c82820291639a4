import type { FeatureId } from '../site/document.ts';
import { fractionWords } from '../units/fraction-words.ts';
import type { ColdFigures } from './choose-types.ts';

/** A field and its cold air. */
export interface ColdField {
  readonly id: FeatureId;
  readonly name: string;
  readonly areaM2: number;
  readonly cold: ColdFigures;
}
/** A field's place among others, 1 for the most cold air; those that hold none share the last. */
export interface ColdRank extends ColdField {
  readonly rank: number;
  readonly holdsSome: boolean;
  readonly sentence: string;
}
/** How a person's lengths and areas are written. */
export interface ColdUnits {
  readonly depth: (depthM: number) => string;
  readonly area: (areaM2: number) => string;
}

/** Less of a field than this in a hollow is none worth ranking. Our choice. */
const LEAST_SHARE = 0.02;
/** What belts hold back is told from this share of the field on. */
const TOLD_SHARE = 0.05;
/** Air of so much ground that comes through is told, where it is more than the field itself. Our choice. */
const TOLD_M2 = 10_000;

const holdsSome = ({ cold }: Pick<ColdField, 'cold'>): boolean => cold.dammedShare >= LEAST_SHARE;

/** The fields with most cold air first, as things stand. */
export function inColdOrder<Field extends Pick<ColdField, 'name' | 'cold'>>(
  fields: readonly Field[],
): (Field & Pick<ColdRank, 'rank' | 'holdsSome'>)[] {
  const held = fields
    .filter(holdsSome)
    .toSorted((a, b) => b.cold.heldDepthM - a.cold.heldDepthM || a.name.localeCompare(b.name));
  const free = fields.filter((field) => !holdsSome(field)).toSorted((a, b) => a.name.localeCompare(b.name));
  return [...held, ...free].map((field, i) => ({
    ...field,
    rank: Math.min(i, held.length) + 1,
    holdsSome: i < held.length,
  }));
}

/** The same, each with a sentence made of its figures. No degrees. */
export const coldRanks = (fields: readonly ColdField[], units: ColdUnits): ColdRank[] =>
  inColdOrder(fields).map((field, i) => ({
    ...field,
    sentence: sentence(field, field.holdsSome ? leadIn(i, fields.length) : null, units),
  }));

const leadIn = (place: number, of: number): string =>
  of === 1 ? 'holds cold air' : place === 0 ? 'holds the most cold air' : 'holds less';

function sentence(
  { name, areaM2, cold }: ColdField,
  lead: string | null,
  { depth, area }: ColdUnits,
): string {
  const from = cold.drainsThroughM2;
  const through = from >= TOLD_M2 && from > areaM2 ? area(from) : null;
  if (lead === null)
    return `${name} lies in no hollow: cold air runs off it${through ? `, and that of ${through} of ground above runs through` : ''}.`;
  const lies = cold.dammedShare >= 1 ? 'all of it lies' : `${fractionWords(cold.dammedShare)} of it lies`;
  const first = `${name} ${lead}: ${lies} in a hollow up to ${depth(cold.deepestM)} deep`;
  const more = cold.dammedShare - cold.hollowShare;
  const dammed =
    more < TOLD_SHARE
      ? ''
      : cold.hollowShare < LEAST_SHARE
        ? ', and all of that is what stands there holding it back'
        : `, of which the land alone would make ${fractionWords(cold.hollowShare)}`;
  return `${first}${dammed}${through ? `; the air of ${through} of ground above comes down into it` : ''}.`;
}

const CAVEAT =
  'Where cold air would lie on a still night, from the shape of the land and what is dense to the ground. It is a rank, not a temperature: a thermometer on a few clear nights tells more.';
/** Cells of a terrain file as large as this lose the narrow ways out of a valley. Our choice. */
const COARSE_M = 10;

/** What the ranks say and what they do not. @param terrainCellM cells on which the terrain file was laid, no finer than its own; null: there is none. */
export const coldCaveat = (terrainCellM: number | null): string =>
  terrainCellM === null || terrainCellM < COARSE_M
    ? CAVEAT
    : `${CAVEAT} The terrain is known no closer than every ${Math.round(terrainCellM)} m: narrow ways out of a valley are not in it, and hollows come out deeper than they are.`;
