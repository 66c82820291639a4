import { BadInputError } from './bad-input.ts';

/** A point of the compass; winds are named by where they come from. */
export interface CompassPoint {
  readonly short: string;
  readonly name: string;
  /** Degrees clockwise from true north. */
  readonly azimuthDeg: number;
}

const NAMES: readonly (readonly [string, string])[] = [
  ['N', 'north'],
  ['NNE', 'north-north-east'],
  ['NE', 'north-east'],
  ['ENE', 'east-north-east'],
  ['E', 'east'],
  ['ESE', 'east-south-east'],
  ['SE', 'south-east'],
  ['SSE', 'south-south-east'],
  ['S', 'south'],
  ['SSW', 'south-south-west'],
  ['SW', 'south-west'],
  ['WSW', 'west-south-west'],
  ['W', 'west'],
  ['WNW', 'west-north-west'],
  ['NW', 'north-west'],
  ['NNW', 'north-north-west'],
];

export const SECTOR_WIDTH_DEG = 360 / NAMES.length;
/** The sixteen points, clockwise from north. */
export const COMPASS_POINTS: readonly CompassPoint[] = NAMES.map(([short, name], i) => ({
  short,
  name,
  azimuthDeg: i * SECTOR_WIDTH_DEG,
}));

/** North, north-east, east and so on, clockwise. */
export const EIGHT_POINTS: readonly CompassPoint[] = COMPASS_POINTS.filter((_, i) => i % 2 === 0);

const nearest = (points: readonly CompassPoint[], azimuthDeg: number): number =>
  Math.round((((azimuthDeg % 360) + 360) % 360) / (360 / points.length)) % points.length;

/** The nearest of the sixteen points, of an azimuth that may go beyond the circle, and its index. */
export const compassIndex = (azimuthDeg: number): number => nearest(COMPASS_POINTS, azimuthDeg);
export const nearestPoint = (azimuthDeg: number): CompassPoint => COMPASS_POINTS[compassIndex(azimuthDeg)];

/** The nearest of the eight directions: "south-east". */
export const directionWord = (azimuthDeg: number): string =>
  EIGHT_POINTS[nearest(EIGHT_POINTS, azimuthDeg)].name;
/** The nearest of the sixteen directions: "east-south-east". */
export const fineDirectionWord = (azimuthDeg: number): string => nearestPoint(azimuthDeg).name;

/** The point that letters such as "SSW" stand for, in capitals or not; undefined: they are none. */
export const pointByLetters = (letters: string): CompassPoint | undefined =>
  COMPASS_POINTS.find(({ short }) => short === letters.toUpperCase());

const bare = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z]/g, '')
    .replace(/erly$|ern$/, '');

/** The compass point a person wrote: "SW", "south-west", "South Westerly". */
export function compassPoint(text: string): CompassPoint {
  const wanted = bare(text);
  const found = COMPASS_POINTS.find(({ short, name }) => wanted === bare(short) || wanted === bare(name));
  if (found) return found;
  throw new BadInputError(
    `"${text}" is no compass point; one such as "SW" or "south-south-west" is expected.`,
  );
}
