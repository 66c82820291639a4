import type { LonLat } from '../geo/frame.ts';
import { distanceM } from '../geo/geodesic.ts';
import { placeFromText } from '../geo/place-from-text.ts';
import { siteCentre } from '../scene/site-ground.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { SiteOnDisk } from './read-files.ts';

/** A spot farther away than this has nothing to do with the site. */
const MOST_AWAY_M = 5000;

/** The spot that a command is asked about. @throws BadInputError for what is no place, or none near the site. */
export function spotOf(text: string, { document, fileName }: SiteOnDisk): LonLat {
  const spot = placeFromText(text);
  const awayM = distanceM(siteCentre(document), spot);
  if (awayM <= MOST_AWAY_M) return spot;
  throw new BadInputError(
    `--at is ${text}, ${Math.round(awayM / 1000)} km from the site of ${fileName}; expected a spot on it, latitude first.`,
  );
}
