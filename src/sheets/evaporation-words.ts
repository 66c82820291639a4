/** What shelter does to evaporation, in words; the same on the screen and on the command line. */

/** "57 mm (11 %) less", "2 mm (0.5 %) more", "the same". @param mm how a depth of water is written. */
export function reliefWords(openMm: number, hereMm: number, mm: (depthMm: number) => string): string {
  const reliefMm = openMm - hereMm;
  if (Math.abs(reliefMm) < 0.5) return 'the same';
  const share = Math.abs(reliefMm / openMm) * 100;
  const percent = share < 1 ? share.toFixed(1) : String(Math.round(share));
  return `${mm(Math.abs(reliefMm))} (${percent} %) ${reliefMm > 0 ? 'less' : 'more'}`;
}

/** "57 mm (11 %) less than in the open", "as much as in the open". */
export const reliefThanOpen = (openMm: number, hereMm: number, mm: (depthMm: number) => string): string =>
  Math.abs(openMm - hereMm) < 0.5
    ? 'as much as in the open'
    : `${reliefWords(openMm, hereMm, mm)} than in the open`;

/** On how many days less wind raises evaporation, and why; null where there are none. */
export function wrongWayWords(wrongWayDays: number, days: number): string | null {
  if (wrongWayDays === 0) return null;
  return `On ${wrongWayDays} of ${days} days of the growing season the air is so humid for the sun there is that wind cools more than it dries: then shelter raises evaporation.`;
}

export const EVAPORATION_RESTS_ON =
  'Reference evaporation of a short, well-watered grass after FAO-56 Penman–Monteith, day by day from the weather file, with the season’s share of open wind; the sun is that of open ground. Shade and roots change it as well, and are not in this figure.';
