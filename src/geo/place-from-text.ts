import type { LonLat } from '../geo/frame.ts';
import { BadInputError } from '../units/bad-input.ts';

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
/** Degrees, perhaps minutes and seconds, with a sign or a letter of the compass before or after. */
const ANGLE = new RegExp(
  String.raw`([NSEW])?\s*([-+−])?\s*(${NUMBER})\s*(?:°|d|º)?\s*(?:(${NUMBER})\s*(?:['′’m])\s*)?(?:(${NUMBER})\s*(?:["″”s]|'')?\s*)?([NSEW])?`,
  'iy',
);

interface Angle {
  readonly deg: number;
  readonly letter: string | null;
}

/**
 * A place as people write it, latitude first unless letters say otherwise: "45.1, -64.5", "45.1 N 64.5 W",
 * "45°06'00\" N, 64°30' W", "45 06 00 N 64 30 00 W".
 * @throws BadInputError when it cannot be read or lies off the globe.
 */
export function placeFromText(text: string): LonLat {
  const tidy = text.trim().replace(/\s+/g, ' ');
  const halves = splitInTwo(tidy);
  const first = halves ? angleOf(halves[0]) : null;
  const second = halves ? angleOf(halves[1]) : null;
  if (!first || !second)
    throw new BadInputError(
      `“${text.trim()}” is not a place: expected a latitude and a longitude, such as 45.1, -64.5 or 45°06′ N 64°30′ W.`,
    );
  const swapped = isEastWest(first.letter) || isNorthSouth(second.letter);
  const [lat, lon] = swapped ? [second, first] : [first, second];
  if (isEastWest(lat.letter) || isNorthSouth(lon.letter))
    throw new BadInputError(
      `“${text.trim()}” gives the same direction twice: expected one of N or S and one of E or W.`,
    );
  if (Math.abs(lat.deg) > 90)
    throw new BadInputError(`The latitude is ${lat.deg}°: expected -90 to 90 (north is positive).`);
  if (Math.abs(lon.deg) > 180)
    throw new BadInputError(`The longitude is ${lon.deg}°: expected -180 to 180 (east is positive).`);
  return [lon.deg, lat.deg];
}

const isNorthSouth = (letter: string | null): boolean => letter === 'N' || letter === 'S';
const isEastWest = (letter: string | null): boolean => letter === 'E' || letter === 'W';

/** After a letter, at a comma or semicolon, or in the middle of an even number of figures. */
function splitInTwo(text: string): [string, string] | null {
  const separated = /^(.*?[^,;])\s*[,;]\s+(.+)$/.exec(text) ?? /^([^,;]+)[;,]([^,;]+)$/.exec(text);
  if (separated) return [separated[1], separated[2]];
  const lettered = /^(.+?[NSEW])\s+(.+[NSEW])$/i.exec(text) ?? /^([NSEW].+?)\s+([NSEW].+)$/i.exec(text);
  if (lettered) return [lettered[1], lettered[2]];
  const words = text.split(' ');
  if (words.length % 2 !== 0) return null;
  return [words.slice(0, words.length / 2).join(' '), words.slice(words.length / 2).join(' ')];
}

function angleOf(text: string): Angle | null {
  // Figures with nothing but spaces between them are degrees, minutes, seconds.
  const marked = text
    .trim()
    .replace(
      new RegExp(
        String.raw`^([NSEW]?\s*[-+−]?)\s*(${NUMBER})\s+(${NUMBER})(?:\s+(${NUMBER}))?(\s*[NSEW]?)$`,
        'i',
      ),
      (_, sign, deg, min, sec, letter) => `${sign}${deg}°${min}′${sec ? `${sec}″` : ''}${letter}`,
    );
  ANGLE.lastIndex = 0;
  const match = ANGLE.exec(marked);
  if (!match || ANGLE.lastIndex !== marked.length) return null;
  const [, before, sign, degrees, minutes, seconds, after] = match;
  if (before && after) return null;
  const min = toNumber(minutes);
  const sec = toNumber(seconds);
  if (min >= 60 || sec >= 60) return null;
  const letter = (before ?? after)?.toUpperCase() ?? null;
  const size = toNumber(degrees) + min / 60 + sec / 3600;
  const negative = sign === '-' || sign === '−' || letter === 'S' || letter === 'W';
  return { deg: negative ? -size : size, letter };
}

const toNumber = (text: string | undefined): number => (text ? Number(text.replace(',', '.')) : 0);
