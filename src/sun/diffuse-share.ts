/**
 * Share of global radiation that comes from the sky and not from the sun's disc, from the clearness index
 * (global / extraterrestrial on the horizontal): Erbs, Klein & Duffie 1982, eq. 1.
 */
export function diffuseShare(clearness: number): number {
  const k = clearness;
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k > 0.8) return 0.165;
  return 0.9511 - 0.1604 * k + 4.388 * k ** 2 - 16.638 * k ** 3 + 12.336 * k ** 4;
}
