/** What the years of belts are called, on the screen and on the command line. */
import { fineDirectionWord } from '../units/compass.ts';
import type { BridgeOffer } from './bridge.ts';
import { type BeltFinding, FINDING_NAMES, type FindingKind } from './finding-types.ts';
import type { Insurance } from './insurance-belt.ts';
import { type BeltWhen, PACES } from './years-to-protect.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** "year 9 to 14", "year 8", "after year 40". */
export function yearBandWords({ usefulFrom: { slow, usual, fast }, protects, years }: BeltWhen): string {
  if (!protects) return 'not on this field';
  const last = years[years.length - 1];
  if (fast === null && usual === null) return `after year ${last}`;
  const first = fast ?? usual;
  if (slow === null) return `year ${first} at the earliest, or after year ${last}`;
  return first === slow ? `year ${slow}` : `year ${first} to ${slow}`;
}

/** "Useful from year 9 to 14: then it cuts …" */
export function whenSentence(when: BeltWhen, fieldName: string, metres: (lengthM: number) => string): string {
  const { protects, fullShare, watchedM, cutAtWatched, years, plantedYear } = when;
  if (!protects)
    return `By itself it never cuts the wind by 30 % on a part of ${fieldName} worth naming: it stands too far off, or shelters other ground.`;
  const at20 = years.indexOf(Math.max(0, plantedYear) + 20);
  const [slow, fast] = [cutAtWatched.slow[at20], cutAtWatched.fast[at20]];
  return `Useful from ${yearBandWords(when)} on. Twenty years after planting it cuts the wind from the ${fineDirectionWord(when.fromDeg)} by 30 % or more on ${percent(fullShare)} of ${fieldName}, and by ${slow === fast ? percent(slow) : `${percent(Math.min(slow, fast))} to ${percent(Math.max(slow, fast))}`} at five heights (${metres(watchedM)}) behind it.`;
}

/** What an insuring belt promises, in sentences. @param calendar the calendar year of a year after the base year. */
export function insuranceSentence(
  { wish, leastCutShare, withEdge, withoutEdge, plantedAtOnce, latest, needless }: Insurance,
  calendar: (year: number) => number,
): string {
  const loss = `Felled in year ${wish.felledInYear} (${calendar(wish.felledInYear)}) with nothing planted, the field’s wind is cut by ${percent(withoutEdge)} instead of ${percent(withEdge)}.`;
  if (withEdge < leastCutShare)
    return `${loss} Even with the edge it is cut by less than the ${percent(leastCutShare)} to be kept.`;
  if (needless) return `${loss} That keeps the ${percent(leastCutShare)}: nothing need be planted for it.`;
  const years = PACES.map((pace) => latest[pace]);
  if (years.every((year) => year === null))
    return `${loss} A belt planted at once still lets it fall to ${percent(plantedAtOnce)}, below the ${percent(leastCutShare)} to be kept: it would have to be felled later, or a net put up.`;
  const by = (year: number | null, growth: string) =>
    year === null
      ? `${growth} even planting at once is too late`
      : `${growth} by year ${year} (${calendar(year)})`;
  return `${loss} To keep ${percent(leastCutShare)}, plant ${by(latest.usual, 'at usual growth')}, ${by(latest.slow, 'slow')}, ${by(latest.fast, 'fast')}.`;
}

/** What a bridge is and what it gains, in sentences. */
export function bridgeSentence(
  { nurse, fromYear, toYear, gains, drawn }: BridgeOffer,
  fieldName: string,
  calendar: (year: number) => number,
  metres: (lengthM: number) => string,
): string {
  const { properties } = drawn;
  const what =
    nurse === null && properties.kind === 'wall'
      ? `A net ${metres(properties.heightM ?? 0)} tall, half open`
      : `A row of ${nurse}`;
  const best = gains.reduce((most, gain) =>
    gain.protectedWith - gain.protectedWithout > most.protectedWith - most.protectedWithout ? gain : most,
  );
  return `${what}, ${fromYear === toYear ? `year ${fromYear} (${calendar(fromYear)})` : `years ${fromYear} to ${toYear} (${calendar(fromYear)} to ${calendar(toYear)})`}. It gains most in year ${best.year}: the wind from its side is cut by 30 % or more on ${percent(best.protectedWith)} of ${fieldName} instead of ${percent(best.protectedWithout)}; ${meanWords(best)}.`;
}

function meanWords({ meanCutWith, meanCutWithout }: BridgeOffer['gains'][number]): string {
  const [with_, without] = [percent(meanCutWith), percent(meanCutWithout)];
  return with_ === without
    ? `to all the growing season’s wind on average, cut by ${without}, it adds less than can be said`
    : `all the growing season’s wind on average by ${with_} instead of ${without}`;
}

/** "Too dense; too short; 2 gaps": what is wrong with a belt, in one line. */
export function inOneLine(findings: readonly BeltFinding[]): string {
  const counts = new Map<FindingKind, number>();
  for (const { kind } of findings) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const names = [...counts].map(([kind, count], i) => {
    if (count > 1) return `${count} gaps`;
    const name = FINDING_NAMES[kind];
    return i === 0 ? name : name.charAt(0).toLowerCase() + name.slice(1);
  });
  return names.join('; ');
}
