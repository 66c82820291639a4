/** The sentences that matter about fields, written by rule from their figures. */
import type { FeatureId } from '../site/document.ts';
import { numberInWords, shareInWords } from '../units/fraction-words.ts';
import { listInWords } from '../units/list-in-words.ts';
import { BELT_HEIGHT_M, type BeltGrowth } from './belt-needed.ts';
import type { FieldFigures, WithoutOwner } from './choose-types.ts';
import { type ChooseUnits, percentWords } from './measure-words.ts';
import { measureOf } from './measures.ts';

/** A field as sentences speak of it. */
export interface NamedField extends FieldFigures {
  readonly id: FeatureId;
  readonly name: string;
}

/** From these on an owner's edges are worth a sentence: part of the light they take, part of the wind they cut. */
const TOLD_LIGHT = 0.02;
const TOLD_CUT = 0.05;
/** From this share of the field on it is said what rests on somebody else's edge, and what lies in a frost hollow. */
const TOLD_BORROWED = 0.1;
const TOLD_HOLLOW = 0.1;
/** Less than this part of it is next to none. */
const NEXT_TO_NONE = 0.03;
/** Less belt than this is none. */
const LEAST_BELT_M = 20;
/** No more fields than this are named in one sentence. */
const MOST_NAMED = 4;

const standing = ({ states }: FieldFigures) => {
  const figures = states.get('stands');
  if (!figures) throw new RangeError('expected the field as it stands among its states, found none');
  return figures;
};
const both = measureOf('bothM2');
const bothM2 = (field: FieldFigures): number => both.of(field, 'stands') ?? 0;
export const ownersWords = (owner: string): string => `${owner}${/s$/i.test(owner) ? '’' : '’s'}`;

/** What an owner's edges take of a field's light and of its wind, against the same field without them. */
export function tradeOf(field: FieldFigures, { figures }: WithoutOwner) {
  const now = standing(field);
  return {
    lightTaken: figures.lightGrowing > 0 ? 1 - now.lightGrowing / figures.lightGrowing : 0,
    windCut: figures.windCutGrowing < 1 ? 1 - (1 - now.windCutGrowing) / (1 - figures.windCutGrowing) : 0,
    keptM2: figures.bothShare * field.ground.areaM2,
    borrowedShare: now.bothShare - figures.bothShare,
  };
}

/** The owner whose edges do most to a field; null: nobody's does anything worth telling. */
function mainOwner(field: FieldFigures): WithoutOwner | null {
  const weight = (owner: WithoutOwner) => {
    const { lightTaken, windCut } = tradeOf(field, owner);
    return lightTaken >= TOLD_LIGHT || windCut >= TOLD_CUT ? Math.abs(lightTaken) + Math.abs(windCut) : 0;
  };
  return field.withoutOwners.reduce<WithoutOwner | null>(
    (best, owner) => (weight(owner) > (best ? weight(best) : 0) ? owner : best),
    null,
  );
}

/** "gives up a fifth of its light to the neighbour's spruces and has its wind cut by 38 % in return" */
function tradeClause(field: FieldFigures, owner: WithoutOwner): string {
  const { lightTaken, windCut } = tradeOf(field, owner);
  const edges = `${ownersWords(owner.owner)} ${owner.noun}`;
  if (windCut < TOLD_CUT)
    return `gives up ${shareInWords(lightTaken)} of its light to ${edges} and gets ${windCut > 0.005 ? 'next to ' : ''}no shelter for it`;
  if (lightTaken < TOLD_LIGHT)
    return `has its wind cut by ${percentWords(windCut)} by ${edges}, which ${owner.noun.endsWith('s') ? 'take' : 'takes'} ${shareInWords(Math.max(0, lightTaken))} of its light`;
  return `gives up ${shareInWords(lightTaken)} of its light to ${edges} and has its wind cut by ${percentWords(windCut)} in return`;
}

/** What of it ends where the edges are felled; null: little. */
function borrowedClause(field: FieldFigures, owner: WithoutOwner, units: ChooseUnits): string | null {
  const { borrowedShare, keptM2 } = tradeOf(field, owner);
  if (borrowedShare < TOLD_BORROWED) return null;
  const all = bothM2(field);
  const rest = keptM2 < NEXT_TO_NONE * all ? 'next to none' : units.area(keptM2);
  return `felled, ${rest} of the ${units.area(all)} that have both would be left`;
}

/** "needs 240 m of belt and about eleven years to match it"; null: it needs none. */
function beltClause(
  field: FieldFigures,
  growth: BeltGrowth | null,
  units: ChooseUnits,
  end: string,
): string | null {
  const { beltNeededM, shelteredFrom } = field;
  if (beltNeededM < LEAST_BELT_M) return null;
  const belt = `needs ${units.length(Math.round(beltNeededM / 10) * 10)} of belt`;
  const { usual } = shelteredFrom;
  if (usual !== null && usual > 0)
    return `${belt}, and with what is planned half of it is in shelter from year ${usual} on`;
  if (!growth) return `${belt} ${end}`;
  return `${belt} and about ${numberInWords(growth.years)} years ${end}`;
}

/** What matters of one field, in up to four sentences. */
export function fieldSentences(field: NamedField, growth: BeltGrowth | null, units: ChooseUnits): string[] {
  const now = standing(field);
  const owner = mainOwner(field);
  const share = now.bothShare;
  const said = [
    share < 0.005
      ? `No ground of ${field.name} has both enough light and enough shelter as it stands.`
      : `${units.area(bothM2(field))} of ${field.name} (${percentWords(share)}) have both enough light and enough shelter as it stands.`,
  ];
  if (owner) {
    const ends = borrowedClause(field, owner, units);
    said.push(`It ${tradeClause(field, owner)}${ends ? `; ${ends}` : ''}.`);
  }
  const belt = beltClause(field, growth, units, 'for the rest of it to be in shelter');
  if (belt) said.push(`It ${belt}.`);
  if (field.ground.cold.dammedShare >= TOLD_HOLLOW)
    said.push(`${capital(shareInWords(field.ground.cold.dammedShare))} of it lies in a frost hollow.`);
  return said;
}

/** The two or three sentences that matter between fields. @param fields those that are still in, two or more. */
export function comparingSentences(
  fields: readonly NamedField[],
  growth: BeltGrowth | null,
  units: ChooseUnits,
): string[] {
  if (fields.length < 2) return [];
  const said = [bothSentence(fields, units), tradeSentence(fields, growth, units), coldSentence(fields)];
  return said.flatMap((sentence) => (sentence === null ? [] : [sentence]));
}

/** The most first; those that are alike in name order, so that the order in which fields come changes nothing. */
const byBoth = (fields: readonly NamedField[]): NamedField[] =>
  fields.toSorted((a, b) => bothM2(b) - bothM2(a) || a.name.localeCompare(b.name));

function bothSentence(fields: readonly NamedField[], units: ChooseUnits): string {
  const [most, ...others] = byBoth(fields);
  if (bothM2(most) < both.alikeWithin)
    return 'None of them has ground worth naming with both enough light and enough shelter as it stands.';
  const alike = others.filter((field) => bothM2(most) - bothM2(field) < both.alikeWithin);
  const rest = others.filter((field) => !alike.includes(field));
  const lead =
    alike.length > 0
      ? `${listInWords(
          [most, ...alike].map(({ name }) => name),
          MOST_NAMED,
        )} are alike in ground with both enough light and enough shelter, about ${units.area(bothM2(most))}`
      : `${most.name} has the most ground with both enough light and enough shelter, ${units.area(bothM2(most))}`;
  if (rest.length === 0) return `${lead}.`;
  const named = rest.slice(0, MOST_NAMED - 1);
  const words = named.map((field) => {
    const has = bothM2(field);
    return `${field.name} has ${has < 0.005 * field.ground.areaM2 ? 'none' : units.area(has)}`;
  });
  const more = rest.length - named.length;
  return `${lead}; ${listInWords(more > 0 ? [...words, `the other ${numberInWords(more)} no more than that`] : words, MOST_NAMED)}.`;
}

/** What the best sheltered field pays for it, and what the next best open one needs to match it. */
function tradeSentence(
  fields: readonly NamedField[],
  growth: BeltGrowth | null,
  units: ChooseUnits,
): string | null {
  const sheltered = byBoth(fields).find((field) => mainOwner(field) !== null);
  const open = fields
    .filter((field) => field !== sheltered && field.beltNeededM >= LEAST_BELT_M)
    .toSorted((a, b) => b.beltNeededM - a.beltNeededM || a.name.localeCompare(b.name))
    .at(0);
  const owner = sheltered && mainOwner(sheltered);
  const pays = owner
    ? `${sheltered.name} ${tradeClause(sheltered, owner)}${withBorrowed(borrowedClause(sheltered, owner, units))}`
    : null;
  const needs = open
    ? beltClause(open, growth, units, pays ? 'to match it' : 'to be in shelter all over')
    : null;
  const both = [pays, needs ? `${open?.name} ${needs}` : null].filter((part) => part !== null);
  return both.length > 0 ? `${both.join('; ')}.` : null;
}

const withBorrowed = (clause: string | null): string => (clause ? ` (${clause})` : '');

function coldSentence(fields: readonly NamedField[]): string | null {
  const cold = fields
    .filter(({ ground }) => ground.cold.dammedShare >= TOLD_HOLLOW)
    .toSorted(
      (a, b) => b.ground.cold.dammedShare - a.ground.cold.dammedShare || a.name.localeCompare(b.name),
    );
  if (cold.length === 0) return null;
  const words = cold.map(({ name, ground }) => `${shareInWords(ground.cold.dammedShare)} of ${name}`);
  return `On a still night cold air would lie on ${listInWords(words, MOST_NAMED)}.`;
}

/** What the belts needed and their years rest on. */
export const beltsRestOn = (growth: BeltGrowth | null, units: ChooseUnits): string =>
  `Belt needed: as much as cuts the wind by 30 % over ten of its heights, ${units.length(BELT_HEIGHT_M)} tall, across the wind${growth ? `; shelter trees are that tall after ${growth.quickYears} to ${growth.slowYears} years by species, usual growth` : ''}. Common practice, no source.`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
