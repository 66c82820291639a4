import type { LonLat } from '../geo/frame.ts';
import { azimuthDeg, destination, distanceM, lineLengthM } from '../geo/geodesic.ts';
import { BadInputError } from '../units/bad-input.ts';

export interface RowSpacing {
  readonly spacingM: number;
  /**
   * `given`: the first at the start of the line, then at the spacing as far as it goes; `fitted`: the spacing is changed a
   * little so that one stands at either end.
   */
  readonly fit: 'given' | 'fitted';
}
export interface RowPlaces {
  readonly places: readonly LonLat[];
  /** Distance between neighbours along the line, as planted. */
  readonly spacingM: number;
  readonly lengthM: number;
}

/** More than this is a slip in the spacing, and would freeze the screen. */
const MOST_TREES = 2000;

/**
 * Places along a line at a spacing, measured on the ground (WGS 84 geodesic) along the line and round its bends.
 * @throws BadInputError for a spacing that is not above 0, or one that would give more than 2000 places.
 */
export function rowPlaces(line: readonly LonLat[], { spacingM, fit }: RowSpacing): RowPlaces {
  if (!(spacingM > 0) || !Number.isFinite(spacingM))
    throw new BadInputError(`Row: the spacing is ${spacingM}; expected a number of metres above 0.`);
  const lengthM = lineLengthM(line);
  // A hair of tolerance, so that a line drawn to an exact multiple keeps its last tree.
  const gaps =
    fit === 'fitted' ? Math.max(1, Math.round(lengthM / spacingM)) : Math.floor(lengthM / spacingM + 1e-6);
  if (gaps + 1 > MOST_TREES)
    throw new BadInputError(
      `Row: ${gaps + 1} trees would stand on ${Math.round(lengthM)} m; expected a spacing that gives at most ${MOST_TREES}.`,
    );
  if (lengthM === 0) return { places: line.slice(0, 1), spacingM, lengthM };
  const stepM = fit === 'fitted' ? lengthM / gaps : spacingM;

  const places: LonLat[] = [];
  let walkedM = 0;
  let segment = 0;
  let segmentM = distanceM(line[0], line[1]);
  for (let i = 0; i <= gaps; i++) {
    const atM = Math.min(i * stepM, lengthM);
    while (atM > walkedM + segmentM && segment < line.length - 2) {
      walkedM += segmentM;
      segment++;
      segmentM = distanceM(line[segment], line[segment + 1]);
    }
    const from = line[segment];
    places.push(
      atM === walkedM ? from : destination(from, azimuthDeg(from, line[segment + 1]), atM - walkedM),
    );
  }
  return { places, spacingM: stepM, lengthM };
}
