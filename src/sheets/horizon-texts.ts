/** What stands beside the strip in words: how to find the spot, how to compare, how sure it is, and what not to do. */
import type { LonLat } from '../geo/frame.ts';
import type { HorizonPageInput } from './horizon-input.ts';
import { lengthWords } from './horizon-scale.ts';

export const NEVER_LOOK =
  'Never look at the sun, not even low or through leaves, sunglasses or a camera: cover it with your hand and look beside it.';

/** Checked by tests/light/view-from.test.ts and tests/truth/light/view-from.test.ts. */
export const HOW_SURE =
  'How sure: hours are counted every five minutes through crowns and belts of simple shapes; a plain count on drawn scenes agrees to 0.1 % of the open hours, walls and ring horizons to 2 hours a year. What is not known weighs far more: how tall and wide each crown is in that year, and how dense. The sun is drawn where it stands without the air; at the very horizon it is seen half a degree higher. An estimate, not a guarantee; a shade figure never means that a tree is sound.';

/** "45.10012° N, 64.50034° W". */
export const placeText = ([lon, lat]: LonLat): string =>
  `${Math.abs(lat).toFixed(5)}° ${lat < 0 ? 'S' : 'N'}, ${Math.abs(lon).toFixed(5)}° ${lon < 0 ? 'W' : 'E'}`;

export const placeInWords = ({ lonLat }: HorizonPageInput): string => `At ${placeText(lonLat)} (WGS 84).`;

/** Height of the eyes of a person who stands, m (common practice, no source). */
const STANDING_M = 1.6;

export function howToCompare({ view, unit }: HorizonPageInput): string[] {
  const higherM = STANDING_M - view.readingHeightM;
  const lower = (awayM: number) => Math.round((Math.atan(higherM / awayM) * 180) / Math.PI);
  const away = (m: number) => lengthWords(m, unit);
  return [
    'Face a direction of the strip: degrees are from true north, the needle’s figure is what a compass shows there.',
    'Count fists: a fist at the end of your stretched arm is about 10°, up from the level of your eye and along. Try it on 9 fists from level to overhead.',
    ...(higherM > 0.3
      ? [
          `The strip is seen from ${lengthWords(view.readingHeightM, unit)}: bring your eye down to it. Standing, things ${away(10)} off look about ${lower(10)}° lower, things ${away(40)} off ${lower(40)}°.`,
        ]
      : []),
    'What stands higher or lower than drawn, measure it: the height you type in takes the place of the estimate.',
  ];
}
