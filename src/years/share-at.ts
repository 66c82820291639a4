/** A share in a year between those that are known; the first and last hold beyond their ends. */
export function shareAt(years: readonly number[], shares: readonly number[], year: number): number {
  const next = years.findIndex((each) => each >= year);
  if (next === 0) return shares[0];
  if (next < 0) return shares[shares.length - 1];
  const between = (year - years[next - 1]) / (years[next] - years[next - 1]);
  return shares[next - 1] + between * (shares[next] - shares[next - 1]);
}
