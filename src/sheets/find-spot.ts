import type { Frame, LonLat } from '../geo/frame.ts';
import { azimuthDeg, distanceM } from '../geo/geodesic.ts';
import { tapedDistance } from '../geo/tape.ts';
import type { Grid } from '../numeric/grid.ts';
import { type FindablePoint, findablePoints } from '../outside/findable-points.ts';
import { tapeText } from '../outside/tape-words.ts';
import { featuresOfKind } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import type { LengthUnit } from './plan-input.ts';

/** Two tapes that meet at less than this, or flatter than the rest of a half circle, leave the spot uncertain. */
const LEAST_MEETING_DEG = 25;
/** Nobody tapes further, m. */
const FURTHEST_M = 100;
/** Level and slope are told apart from here, m. */
const SLOPE_TOLD_M = 0.02;

/**
 * How a spot is found from what is drawn: by tape and compass from the nearest point that can be found outside, and
 * by a second tape from another where the two meet well.
 */
export function findSpot(
  document: SiteDocument,
  frame: Frame,
  ground: Grid,
  layout: string | null,
  spot: LonLat,
  options: { readonly unit: LengthUnit; readonly declinationDeg: number },
): string[] {
  // Where something was once read nothing stands that could be found.
  const readings = new Set(featuresOfKind(document.features, 'measure').map(({ id }) => id));
  const points = findablePoints(document, frame, layout)
    .points.filter((point) => !readings.has(point.of))
    .sort((a, b) => distanceM(a.lonLat, spot) - distanceM(b.lonLat, spot));
  const [first, ...others] = points.filter(({ lonLat }) => distanceM(lonLat, spot) <= FURTHEST_M);
  if (!first) return [];
  const tape = ({ lonLat }: FindablePoint): string => {
    const { levelM, tapeM } = tapedDistance(frame, ground, lonLat, spot);
    const level = tapeText(levelM, options.unit);
    return tapeM - levelM < SLOPE_TOLD_M ? level : `${level} (${tapeText(tapeM, options.unit)} on the slope)`;
  };
  if (distanceM(first.lonLat, spot) < 0.05) return [`It is the ${first.words}.`];
  const bearing = azimuthDeg(first.lonLat, spot);
  const needle = Math.round(bearing - options.declinationDeg + 720) % 360;
  const second = others.find(({ lonLat }) => {
    const angle = Math.abs(turn(bearing - azimuthDeg(lonLat, spot)));
    return angle >= LEAST_MEETING_DEG && angle <= 180 - LEAST_MEETING_DEG;
  });
  return [
    `${tape(first)} from the ${first.words}, towards ${Math.round(bearing) % 360}° (needle ${needle}°).`,
    ...(second ? [`Check: ${tape(second)} from the ${second.words}.`] : []),
  ];
}

/** A turn between -180 and 180 degrees. */
const turn = (deg: number): number => (((deg % 360) + 540) % 360) - 180;
