/** How firm a choice is, in words; no score. */
import type { Matter } from '../site/records/choosing.ts';
import { numberInWords } from '../units/fraction-words.ts';
import { listInWords } from '../units/list-in-words.ts';
import type { ChooseEnd } from './choose-ends.ts';
import type { Firmness, OrderMove } from './firmness.ts';
import { matterWords } from './measure-words.ts';

const END_WORDS: Readonly<Record<ChooseEnd, string>> = {
  'wide-crowns': 'wider crowns',
  'narrow-crowns': 'narrower crowns',
  'slow-growth': 'slow growth',
  'fast-growth': 'fast growth',
  'dense-foliage': 'denser foliage',
  'open-foliage': 'more open foliage',
  'backed-wind': 'the wind from further round anticlockwise',
  'veered-wind': 'the wind from further round clockwise',
};
const MOST_NAMED = 4;

/** "in every draw", "in 8 of 10 draws", "in hardly any", "in none". */
export function drawsWords(share: number): string {
  if (share >= 1) return 'in every draw';
  if (share <= 0) return 'in none';
  const tenths = Math.round(share * 10);
  if (tenths === 10) return 'in nearly every draw';
  if (tenths === 0) return 'in hardly any';
  return `in ${tenths} of 10 draws`;
}

/** @param names of the fields, as they were given to `firmness`. */
export function firmnessSentences(
  { firstShare, first, endsThatChange, movesThatChange }: Firmness,
  names: readonly string[],
  matters: readonly Matter[],
): string[] {
  if (names.length === 0) return ['No field is left to choose from.'];
  if (names.length === 1) return [`${names[0]} is the only one left.`];
  const order = names
    .map((name, k) => ({ name, share: firstShare[k] }))
    .sort((a, b) => b.share - a.share || a.name.localeCompare(b.name));
  const [lead, ...others] = order;
  const named = others.slice(0, MOST_NAMED - 1).filter(({ share }) => share > 0);
  const never = order.filter(({ share }) => share <= 0).map(({ name }) => name);
  const more = order.length - 1 - named.length - never.length;
  const nameOf = (places: readonly number[]) =>
    listInWords(
      places.map((k) => names[k]).sort((a, b) => a.localeCompare(b)),
      MOST_NAMED,
    );
  const parts = [
    `${lead.name} comes first ${drawsWords(lead.share)}`,
    ...named.map(({ name, share }) => `${name} ${drawsWords(share)}`),
    ...(more > 0 ? [`${numberInWords(more)} more now and then`] : []),
    ...(never.length > 0 ? [`${listInWords(never, MOST_NAMED)} in none`] : []),
  ];
  const said = [`${listInWords(parts, parts.length)}.`];
  if (first.length > 1)
    said.push(`In the middle of all weights that keep your order ${nameOf(first)} are level.`);
  const ends = endsThatChange.map(
    ({ end, first: then }) => `with ${END_WORDS[end]} ${nameOf(then)} would come first`,
  );
  said.push(
    ends.length > 0
      ? `What is not known would change that alone: ${listInWords(ends, ends.length)}.`
      : 'Nothing that is not known of growth, crowns, foliage and wind would change that alone.',
  );
  said.push(
    movesThatChange.length > 0
      ? `In your order, ${listInWords(
          movesThatChange.slice(0, 2).map((move) => moveWords(move, matters, nameOf(move.first))),
        )}.`
      : matters.length > 1
        ? 'No single move in your order would change that.'
        : 'Only one thing matters in your order.',
  );
  return said;
}

function moveWords({ from, to }: OrderMove, matters: readonly Matter[], first: string): string {
  const places = Math.abs(from - to);
  const way = to < from ? 'up' : 'down';
  return `moving “${matterWords(matters[from])}” ${way} ${numberInWords(places)} place${places === 1 ? '' : 's'} puts ${first} first`;
}

/** What the draws rest on, said wherever they are. */
export const FIRMNESS_RESTS_ON =
  'Drawn a thousand times: weights of any size that keep your order, and growth, crown spread, foliage and wind direction anywhere in their range. Each thing is weighed from the worst of these fields to the best. It says how firm the choice is, and no more.';
