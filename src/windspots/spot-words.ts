import { roughText, type TapeUnit } from '../outside/tape-words.ts';
import { directionWord } from '../units/compass.ts';
import { beaufortForce } from '../wind/beaufort.ts';
import {
  type Expected,
  METER_HEIGHT_M,
  METER_MINUTES,
  type RangePart,
  type ShareRange,
  type SpotPlan,
  type SpotWind,
  type WindSpot,
} from './spot-plan.ts';

/** "17 %". */
export const percent = (share: number): string => `${Math.round(100 * share)} %`;
/** "13 to 79 %". */
export const rangeText = ({ low, high }: ShareRange): string =>
  `${Math.round(100 * low)} to ${percent(high)}`;
/** Points of open wind, without a sign. */
export const pointsText = (share: number): string => {
  const points = Math.round(Math.abs(100 * share));
  return `${points} ${points === 1 ? 'point' : 'points'}`;
};

const MILES_AN_HOUR_A_MPS = 2.236936;
/** What hand meters show beside a tape in metres, or in feet. */
export const meterUnit = (unit: TapeUnit): string => (unit === 'm' ? 'm/s' : 'mph');
const speedIn = (speedMps: number, unit: TapeUnit): string =>
  (unit === 'm' ? speedMps : speedMps * MILES_AN_HOUR_A_MPS).toFixed(1);
/** "4.0 m/s". */
export const speedText = (speedMps: number, unit: TapeUnit): string =>
  `${speedIn(speedMps, unit)} ${meterUnit(unit)}`;

/** "a wind from the west (270°) of 6.0 m/s, Beaufort 4: dust and paper fly, thin branches move". */
export function windWords({ fromDeg, speedMps }: SpotWind, unit: TapeUnit): string {
  const { force, landSign } = beaufortForce(speedMps);
  return `a wind from the ${directionWord(fromDeg)} (${Math.round(fromDeg) % 360}°) of ${speedText(speedMps, unit)} at 10 m, Beaufort ${force}: ${landSign}`;
}

/** "13 to 79 % of the open wind; 17 % by the function, 8 to 25 % with all that is not known here". */
export const expectedWords = ({ share, byFunction, measured, low, high }: Expected): string =>
  measured
    ? `${rangeText({ low, high })} of the open wind: by the function ${percent(share)} (${rangeText(byFunction)} with what is not known here), behind belts that were measured ${rangeText(measured)}`
    : `${rangeText({ low, high })} of the open wind: by the function ${percent(share)}; nobody measured so near, so far or behind so open a belt`;

/** What the two meters will then show. */
export const speedsWords = ({ low, high }: ShareRange, openMps: number, unit: TapeUnit): string =>
  `${speedIn(low * openMps, unit)} to ${speedText(high * openMps, unit)} there when the open meter shows ${speedText(openMps, unit)}`;

/** "gusts and meters: 8 points less to 8 more (two like meters …)", the widest first. */
export const partsWords = ({ parts }: Expected): string[] =>
  [...parts]
    .sort((a, b) => b.below + b.above - (a.below + a.above))
    .map((part) => `${part.name}: ${partWords(part)} (${part.says})`);

/** "6 points less to 2 more", "up to 4 points more". */
function partWords({ below, above }: Pick<RangePart, 'below' | 'above'>): string {
  const [less, more] = [below, above].map((share) => Math.round(100 * share));
  if (less === more) return `${pointsText(below)} less or more`;
  if (less === 0) return `up to ${pointsText(above)} more`;
  if (more === 0) return `up to ${pointsText(below)} less`;
  return `${pointsText(below)} less to ${more} more`;
}

/** "95.1 m behind it along the wind, 5.0 heights". */
export const distanceWords = ({ distanceM, distanceH, offSquareDeg }: WindSpot, unit: TapeUnit): string =>
  `${roughText(distanceM, unit)} behind it along the wind, ${distanceH.toFixed(1)} heights${offSquareDeg >= 5 ? `; the wind ${Math.round(offSquareDeg)}° off square` : ''}`;

/** How it is done, in order. */
export const howToRead = ({ wind, open }: SpotPlan, unit: TapeUnit): string[] => [
  `Wait for ${windWords(wind, unit)}; steady, for half an hour. Find where it comes from with a ribbon and a compass.`,
  `One meter stands in the open: ${open ? open.words : 'to windward, ten belt heights and more from anything tall'}. The other at a spot. Hold both at ${METER_HEIGHT_M} m, at arm’s length, square to the wind, and stand aside of them.`,
  `Run both over the same ${METER_MINUTES} minutes for a mean, and swap the meters half-way.`,
  'Write down both means, the minutes, the time and where the wind came from, and type them back: the site says how far the model missed.',
];

/** What is usual, and who to ask. */
export const SPOT_CAUTIONS = [
  'Do not measure in a gale, nor under or within a fall of trees in strong wind: branches come down without warning, and a shelter figure never means that a tree is sound. Leave when whole trees begin to move (Beaufort 7).',
  'Look for ditches, edges, live fences, machines and animals before you walk with your eyes on a meter; ask before you stand on other people’s ground.',
];

const GROWS = 'belt';

/** What the promise takes for granted, in sentences. */
export function takenForGranted({ belt }: SpotPlan, ground: string, unit: TapeUnit): string[] {
  const { label, kind, heightM, heightYear, porosity } = belt;
  return [
    `${label.charAt(0).toUpperCase()}${label.slice(1)} is ${roughText(heightM, unit)} tall${kind === GROWS ? ` (end of the season of ${heightYear})` : ''}, and ${percent(porosity)} of the daylight shows through it on that day.`,
    'The function is one of friction near the ground, taken for the wind at 1.5 m; measured belts fall on both sides of it.',
    `Ground: ${ground.charAt(0).toLowerCase()}${ground.slice(1)}.`,
  ];
}
