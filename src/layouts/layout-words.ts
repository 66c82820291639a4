/** What two layouts come to, in sentences made by rule from their figures; for the screen and the command line. */

import { laterBy, PACES, type PaceBand } from '../growth/pace-band.ts';
import { REGISTRY } from '../site/records/registry.ts';
import { type LayoutComparison, type LayoutSide, type LayoutYears, lastYearOf } from './comparison.ts';
import { COST_PARTS, type CostPart, pricesMissing } from './costs.ts';
import type { LayoutName } from './holdings.ts';
import { yearWords } from './measure-words.ts';
import { differInNothing } from './what-differs.ts';

/** Less than this share of open wind or light is not worth a sentence. */
const LEAST_SHARE = 0.02;

const NEVER: PaceBand<number | null> = { slow: null, usual: null, fast: null };

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** What a layout is called; without one, what is common to all. */
export const layoutWords = (layout: LayoutName): string => layout ?? 'what is common to all';

export interface LayoutAnswer {
  readonly figure: string;
  /** One or more sentences; the first can stand without the figure. */
  readonly says: string;
}

/** The answer: which bears sooner and by how much, what that costs in shelter, and when the field is in shelter. */
export function answerOf(comparison: LayoutComparison): LayoutAnswer {
  const [a, b] = comparison.sides;
  if (differInNothing(comparison.differs))
    return {
      figure: 'Nothing differs',
      says: `${capital(layoutWords(a.layout))} and ${layoutWords(b.layout)} hold the same things, at the same places, planted in the same years.`,
    };
  const crop = cropWords(a, b);
  const from = shelteredWords(comparison);
  const says = [crop?.says, plantedIntoWords(a, b), from.says, lightWords(comparison)]
    .filter((part) => part !== null && part !== undefined)
    .join(' ');
  return { figure: crop?.figure ?? from.figure, says };
}

/** "6 years", "6 to 8 years" */
function span(years: PaceBand<number | null>): string {
  const sizes = PACES.flatMap((pace) => {
    const size = years[pace];
    return size === null ? [] : [Math.abs(size)];
  });
  const [low, high] = [Math.min(...sizes), Math.max(...sizes)];
  if (low === high) return `${low} ${low === 1 ? 'year' : 'years'}`;
  return `${low} to ${high} ${high === 1 ? 'year' : 'years'}`;
}

function cropWords(a: LayoutSide, b: LayoutSide): LayoutAnswer | null {
  const [cropsA, cropsB] = [a.years.crops, b.years.crops];
  if (!cropsA || !cropsB) return null;
  const later = laterBy(cropsA.half, cropsB.half);
  const known = PACES.flatMap((pace) => later[pace] ?? []);
  if (known.length === 0) return null;
  const words = (years: LayoutYears) => yearWords(years.crops?.half ?? NEVER, lastYearOf(years));
  if (known.every((years) => years === 0))
    return {
      figure: `Crops from ${words(a.years)}`,
      says: `Both bear in the same years: half of the bearing trees from ${words(a.years)} on.`,
    };
  const signs = new Set(known.map(Math.sign).filter((sign) => sign !== 0));
  const [first, other] = known.some((years) => years > 0) ? [a, b] : [b, a];
  if (signs.size > 1)
    return {
      figure: `Crops from ${words(a.years)}`,
      says: `Which bears sooner hangs on how things grow: half of the bearing trees of ${layoutWords(a.layout)} from ${words(a.years)} on, of ${layoutWords(b.layout)} from ${words(b.years)} on.`,
    };
  return {
    figure: `${span(later)} sooner`,
    says: `${capital(layoutWords(first.layout))} bears ${span(later)} sooner: half of its bearing trees from ${words(first.years)} on, those of ${layoutWords(other.layout)} from ${words(other.years)} on.`,
  };
}

/** Into which wind the trees of either are planted. */
function plantedIntoWords(a: LayoutSide, b: LayoutSide): string | null {
  const [cutA, cutB] = [a.years.cutAtPlanting, b.years.cutAtPlanting];
  if (!cutA || !cutB || Math.abs(cutA.usual - cutB.usual) < LEAST_SHARE) return null;
  const [stiller, windier] = cutA.usual > cutB.usual ? [a, b] : [b, a];
  const cut = ({ slow, usual, fast }: PaceBand<number>) => {
    const [low, high] = [Math.min(slow, fast), Math.max(slow, fast)];
    return percent(low) === percent(high)
      ? percent(usual)
      : `${percent(usual)} (${Math.round(low * 100)} to ${percent(high)})`;
  };
  return `The trees of ${layoutWords(stiller.layout)} are planted into wind that is cut by ${cut(stiller.years.cutAtPlanting!)}, those of ${layoutWords(windier.layout)} into wind that is cut by ${cut(windier.years.cutAtPlanting!)}.`;
}

function shelteredWords({ sides: [a, b], wantedShare, fieldName }: LayoutComparison): LayoutAnswer {
  const lastYear = lastYearOf(a.years);
  const [yearsA, yearsB] = [a, b].map(({ years }) => yearWords(years.shelteredFrom, lastYear));
  const ground = wantedShare === 0.5 ? `Half of ${fieldName}` : `${percent(wantedShare)} of ${fieldName}`;
  const from = (years: string) => (years.startsWith('year') ? `from ${years} on` : years);
  const later = laterBy(a.years.shelteredFrom, b.years.shelteredFrom);
  const known = PACES.flatMap((pace) => later[pace] ?? []);
  const sooner =
    known.length > 0 && known.every((years) => years >= 0) && known.some((years) => years > 0)
      ? a
      : known.length > 0 && known.every((years) => years <= 0) && known.some((years) => years < 0)
        ? b
        : null;
  const by = sooner ? `, ${span(later)} ${sooner === a ? 'later' : 'sooner'}` : '';
  return {
    figure: `In shelter ${from(yearsA)}`,
    says:
      yearsA === yearsB
        ? `${ground} is in shelter ${from(yearsA)} in both.`
        : `${ground} is in shelter ${from(yearsA)} in ${layoutWords(a.layout)} and ${from(yearsB)} in ${layoutWords(b.layout)}${by}.`,
  };
}

function lightWords({ sides: [a, b], year }: LayoutComparison): string | null {
  const [lightA, lightB] = [a.figures.meanLightShare, b.figures.meanLightShare];
  if (!(Math.abs(lightA - lightB) >= LEAST_SHARE)) return null;
  return `In year ${year} the patches get ${percent(lightA)} of open light in ${layoutWords(a.layout)} and ${percent(lightB)} in ${layoutWords(b.layout)}.`;
}

/** What is not the same, thing by thing, in one or two sentences. */
export function differsWords({ differs, sides: [a, b] }: LayoutComparison): string {
  const { onlyA, onlyB, changed } = differs;
  if (differInNothing(differs)) return 'Every thing of the one is in the other as it is.';
  const things = (count: number) => `${count} ${count === 1 ? 'thing' : 'things'}`;
  const reasons = new Set<string>();
  for (const { a: thing, moved, properties } of changed) {
    if (moved) reasons.add('place or shape');
    const { fields } = REGISTRY[thing.properties.kind];
    for (const key of properties)
      reasons.add((fields.find((field) => field.key === key)?.label ?? key).toLowerCase());
  }
  return [
    changed.length > 0
      ? `${capital(things(changed.length))} ${changed.length === 1 ? 'is' : 'are'} in both and not the same (${[...reasons].sort().join(', ')}).`
      : '',
    onlyA.length > 0 ? `${capital(things(onlyA.length))} only in ${layoutWords(a.layout)}.` : '',
    onlyB.length > 0 ? `${capital(things(onlyB.length))} only in ${layoutWords(b.layout)}.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

const PRICE_NAMES: Readonly<Record<CostPart, string>> = {
  trees: 'a tree',
  belts: 'a metre of belt',
  walls: 'a metre of wall, fence or net',
};

/** Which prices are still wanted; null: none. */
export function missingPricesWords({ sides }: LayoutComparison): string | null {
  const missing = pricesMissing(sides.map(({ costs }) => costs));
  if (missing.length === 0) return null;
  const names = COST_PARTS.filter((part) => missing.includes(part)).map((part) => PRICE_NAMES[part]);
  return `No cost is made up: give the price of ${names.join(', and of ')} to have it worked out.`;
}

/** What the figures rest on, said wherever they are shown. */
export const LAYOUTS_REST_ON =
  'Only what a layout has of its own is counted and priced; what is common to all is the same in each. In brackets: the range from slow to fast growth. A species bears in the catalogue’s year at usual growth (common practice, no source), at another when it has the same size (our guess). An estimate, and no guarantee.';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
