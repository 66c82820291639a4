import { fineDirectionWord } from '../units/compass.ts';
import type { WindPageSeason, WindSign } from './wind-page-input.ts';

/** The wind climate in words and figures, the same on the screen, on paper and on the command line. */

const MILES_AN_HOUR_A_MPS = 3600 / 1609.344;
/** Without its unit. */
export const speedFigure = (speedMps: number, unit: 'm/s' | 'mph', digits = 1): string =>
  (unit === 'm/s' ? speedMps : speedMps * MILES_AN_HOUR_A_MPS).toFixed(digits);

export const hoursFigure = (hours: number): string =>
  hours > 0 && hours < 0.5 ? '< 1' : Math.round(hours).toLocaleString('en-GB');

export const percentFigure = (share: number): string =>
  share > 0 && share < 0.005 ? '< 1' : String(Math.round(share * 100));

/** Forces worth a line: from the first that moves a tree to the last that is ever reached for half an hour. */
export function signsSeen(signs: readonly WindSign[], seasons: readonly WindPageSeason[]): WindSign[] {
  return signs.filter(
    ({ force }) =>
      force >= 3 && (force <= 6 || seasons.some(({ hoursFromForce }) => hoursFromForce[force] >= 0.5)),
  );
}

/** "Most often from the south-west (18 %), mean 4.6 m/s, calm 3 %." */
export function seasonSentence(season: WindPageSeason, unit: 'm/s' | 'mph'): string {
  const lead = season.sectors.reduce((best, each) => (each.frequency > best.frequency ? each : best));
  const even =
    season.sectors.length > 1 &&
    season.sectors.every(({ frequency }) => Math.abs(frequency - lead.frequency) < 1e-6);
  const often = even
    ? 'Alike from every side'
    : `Most often from the ${fineDirectionWord(lead.fromDeg)} (${percentFigure(lead.frequency)} % of the hours)`;
  return `${often}; mean ${speedFigure(season.meanSpeedMps, unit)} ${unit}, calm ${percentFigure(season.calmShare)} %.`;
}
