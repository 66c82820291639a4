import { PACES } from '../belts/years-to-protect.ts';
import type { BridgeOffer } from './run-bridges.ts';
import type { Insurance } from './run-insurance.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

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
  const said = (year: number | null) =>
    year === null ? 'too late already' : `year ${year} (${calendar(year)})`;
  return `${loss} To keep ${percent(leastCutShare)}, plant by ${said(latest.usual)}; ${said(latest.slow)} where growth is slow, ${said(latest.fast)} where it is fast.`;
}

/** What a bridge is and what it gains, in sentences. */
export function bridgeSentence(
  { kind, fromYear, toYear, gains, drawn }: BridgeOffer,
  fieldName: string,
  calendar: (year: number) => number,
  metres: (lengthM: number) => string,
): string {
  const { properties } = drawn;
  const what =
    kind === 'net' && properties.kind === 'wall'
      ? `A net ${metres(properties.heightM ?? 0)} tall, half open`
      : `A row of ${String(drawn.properties.kind === 'belt' ? drawn.properties.species : '')}`;
  const best = gains.reduce((most, gain) =>
    gain.protectedWith - gain.protectedWithout > most.protectedWith - most.protectedWithout ? gain : most,
  );
  return `${what}, ${fromYear === toYear ? `year ${fromYear} (${calendar(fromYear)})` : `years ${fromYear} to ${toYear} (${calendar(fromYear)} to ${calendar(toYear)})`}. It gains most in year ${best.year}: the wind from its side is cut by 30 % or more on ${percent(best.protectedWith)} of ${fieldName} instead of ${percent(best.protectedWithout)}; all the growing season’s wind on average by ${percent(best.meanCutWith)} instead of ${percent(best.meanCutWithout)}.`;
}
