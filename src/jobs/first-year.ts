/** A year, and a share in it that grows with the years. */
export interface YearShare {
  readonly year: number;
  readonly share: number;
}

/**
 * The first year with a share, between one with less and one that has it. Years are looked at where a straight line
 * between two that are known says, so that few are; where a line leaves more than half of the years, the next look is
 * in the middle.
 */
export async function firstYearBetween(
  wanted: number,
  less: YearShare,
  enough: YearShare,
  look: (year: number) => Promise<YearShare>,
  halve = false,
): Promise<YearShare> {
  const years = enough.year - less.year;
  if (years <= 1) return enough;
  const part = halve ? 0.5 : (wanted - less.share) / (enough.share - less.share);
  const guess = less.year + Math.round(part * years);
  const seen = await look(Math.min(enough.year - 1, Math.max(less.year + 1, guess)));
  const [from, to] = seen.share >= wanted ? [less, seen] : [seen, enough];
  return firstYearBetween(wanted, from, to, look, to.year - from.year > years / 2);
}
