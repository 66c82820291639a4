import { BadInputError } from '../units/bad-input.ts';
import type { LonLat } from './frame.ts';
import { azimuthDeg, destination, distanceM } from './geodesic.ts';

/** A spot in a picture: pixels right of and below its top left corner. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}
export interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}
/** A picture laid on the ground: the places of its corners, from its top left clockwise. */
export interface PlacedPicture {
  readonly cornersLonLat: [LonLat, LonLat, LonLat, LonLat];
  readonly metresPerPixel: number;
  /** True azimuth of the picture's upward edge, degrees. */
  readonly upDeg: number;
}

/**
 * Lays a picture by two spots of it whose places are known: turned, scaled and moved, never stretched (a similarity).
 */
export function placeByTwoPlaces(
  size: PictureSize,
  a: { readonly pixel: Pixel; readonly lonLat: LonLat },
  b: { readonly pixel: Pixel; readonly lonLat: LonLat },
): PlacedPicture {
  const lengthM = distanceM(a.lonLat, b.lonLat);
  if (!(lengthM > 0))
    throw new BadInputError('The two known places are the same: expected two different places.');
  return placeByDistance(size, {
    from: a.pixel,
    to: b.pixel,
    lengthM,
    bearingDeg: azimuthDeg(a.lonLat, b.lonLat),
    known: a,
  });
}

/**
 * Lays a picture by two spots whose distance is known, and one spot whose place is known.
 * Without a bearing (true, degrees, from the first spot to the second) the picture's top is taken for true north.
 */
export function placeByDistance(
  size: PictureSize,
  measure: {
    readonly from: Pixel;
    readonly to: Pixel;
    readonly lengthM: number;
    readonly bearingDeg?: number;
    readonly known: { readonly pixel: Pixel; readonly lonLat: LonLat };
  },
): PlacedPicture {
  const { from, to, lengthM, known } = measure;
  const pixels = Math.hypot(to.x - from.x, to.y - from.y);
  if (!(pixels >= 2)) {
    throw new BadInputError('The two spots in the picture are the same: expected two spots well apart.');
  }
  if (!(lengthM > 0)) {
    throw new BadInputError(`The distance between the two spots is ${lengthM} m: expected more than 0.`);
  }
  const metresPerPixel = lengthM / pixels;
  const upDeg = measure.bearingDeg === undefined ? 0 : measure.bearingDeg - pictureAngleDeg(from, to);
  const place = (pixel: Pixel): LonLat =>
    destination(
      known.lonLat,
      upDeg + pictureAngleDeg(known.pixel, pixel),
      metresPerPixel * Math.hypot(pixel.x - known.pixel.x, pixel.y - known.pixel.y),
    );
  const { widthPx, heightPx } = size;
  return {
    cornersLonLat: [
      place({ x: 0, y: 0 }),
      place({ x: widthPx, y: 0 }),
      place({ x: widthPx, y: heightPx }),
      place({ x: 0, y: heightPx }),
    ],
    metresPerPixel,
    upDeg: ((upDeg % 360) + 360) % 360,
  };
}

/** Clockwise from the picture's upward edge, degrees (rows run downward). */
const pictureAngleDeg = (from: Pixel, to: Pixel): number =>
  (Math.atan2(to.x - from.x, from.y - to.y) * 180) / Math.PI;
