/** How far expected heights lie from what was read. Shares are of the expected height, above it positive. */
export interface Misses {
  readonly count: number;
  /** Mean of the misses without their signs. */
  readonly meanShare: number;
  /** Mean of the misses with their signs: how much taller (shorter below zero) things are than expected. */
  readonly leanShare: number;
}

/** @param pairs read and expected heights, m. Null: there are none. */
export function missesOf(
  pairs: readonly { readonly readM: number; readonly expectedM: number }[],
): Misses | null {
  if (pairs.length === 0) return null;
  const shares = pairs.map(({ readM, expectedM }) => readM / expectedM - 1);
  const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return { count: pairs.length, meanShare: meanOf(shares.map(Math.abs)), leanShare: meanOf(shares) };
}
