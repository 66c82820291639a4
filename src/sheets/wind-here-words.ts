/** The wind at a spot in words, the same on the screen and on the command line. Shares are of open wind, 0 to 1 and more. */

const percent = (share: number): number => Math.round(share * 100);

/** "cut by 41 %", "open", "faster by 6 %". */
export function cutWords(share: number): string {
  if (!Number.isFinite(share)) return 'no wind';
  const cut = percent(1 - share);
  if (cut === 0) return 'open';
  return cut > 0 ? `cut by ${cut} %` : `faster by ${-cut} %`;
}

/** "48 m away, 4.0 heights"; "12 m downwind, 1.2 heights"; "around the spot". */
export function awayWords(distanceM: number, heightM: number, length: (m: number) => string): string {
  if (distanceM === 0) return 'around the spot';
  const heights = `${(Math.abs(distanceM) / heightM).toFixed(1)} heights`;
  return distanceM > 0
    ? `${length(distanceM)} away, ${heights}`
    : `${length(-distanceM)} downwind, ${heights}`;
}

/** "Spruce belt (owner: neighbour)". */
export const ownedWords = (label: string, owner: string | null): string =>
  owner === null ? label : `${label} (owner: ${owner})`;

/** What the most useful thing is worth: "If Spruce belt alone were gone, the wind here would be cut by 12 % instead." */
export const withoutWords = (label: string, shareWithout: number): string =>
  `If ${label} alone were gone, the wind here would be ${cutWords(shareWithout)} instead.`;

/** Part of the shelter that would go with one thing, 0 to 1; null where there is no shelter to speak of. */
export const shelterPart = (comesBack: number, share: number): number | null =>
  1 - share >= 0.005 ? comesBack / (1 - share) : null;

export const PARTS_EXPLAINED =
  'Where two things stand one behind the other, the stronger counts: neither is missed much alone, so that the parts add up to less than the whole. Where one lengthens the other they add up to more.';
