/** What is wrong with a belt as a planting: its species, the sun it takes, and whose it is. */
import type { BeltFacts } from './belt-facts.ts';
import { type BeltFinding, type Darkened, listed } from './finding-types.ts';

/** Less sun than this a day is not worth a word, hours. Common practice, no source. */
const LEAST_DARK_HOURS = 0.25;

export function speciesFinding({ kind, mixture, otherRows }: BeltFacts): BeltFinding | null {
  const { names, oneGenus } = mixture;
  if (names.length === 0 || otherRows.length > 0 || !oneGenus) return null;
  const whole = listed(names);
  const capital = `${whole.charAt(0).toUpperCase()}${whole.slice(1)}`;
  const another =
    kind === 'block'
      ? 'Another genus wherever a tree falls out'
      : 'A second row, or every third plant, of another genus as tall';
  return {
    kind: names.length > 1 ? 'one genus' : 'one species',
    says:
      names.length > 1
        ? `${capital} are of one genus: most diseases and beetles of the one take the other too.`
        : `${capital} alone: one disease, one beetle or honey fungus takes all of it.`,
    cure: `${another}, written down below; ask which plant-health rules hold.`,
    source: 'common practice, no source',
  };
}

/** Cost of the sun is worked out thing by thing: what stands behind another counts only for what it adds. */
export function darkFinding(darkens: readonly Darkened[] | null): BeltFinding | null {
  const dark = (darkens ?? [])
    .filter(({ hoursADay }) => hoursADay >= LEAST_DARK_HOURS)
    .sort((a, b) => b.hoursADay - a.hoursADay);
  if (dark.length === 0) return null;
  const each = dark.map(
    ({ patch, hoursADay, seasonHours }) =>
      `${patch} ${hoursADay.toFixed(1)} h a day (${Math.round(seasonHours)} h)`,
  );
  return {
    kind: 'darkens',
    says: `It takes sun from the patches over the growing season: ${listed(each)}.`,
    cure: 'Lower, farther off or more open; or plants that bear shade beside it, the sun lovers where it takes less.',
    source: 'light engine, in the chosen year; from a quarter of an hour on: common practice, no source',
  };
}

export function ownerFinding({ owner, planned }: BeltFacts): BeltFinding | null {
  if (planned || owner !== null) return null;
  return {
    kind: 'owner',
    says: 'Nobody has said whose it is: what a neighbour owns, a neighbour may fell.',
    cure: 'Write down the owner below, and look what the field is without it.',
    source: 'common practice, no source',
  };
}
