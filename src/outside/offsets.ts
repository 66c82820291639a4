import type { LonLat } from '../geo/frame.ts';
import { azimuthDeg, destination } from '../geo/geodesic.ts';
import { alongAndRight, type Taped, tapedDistance } from '../geo/tape.ts';
import type { ReferenceLine } from './reference-line.ts';
import type { SiteOutdoors } from './site-outdoors.ts';

/** How a place is found from a line between two points, with one tape along it and one square to it, or with two. */
export interface Offsets {
  /** From A along the line towards B (backwards below zero), then square to it. */
  readonly alongLine: Taped;
  readonly backwards: boolean;
  readonly square: Taped;
  /** Where the tape leaves the line, and to which side seen from A. */
  readonly foot: LonLat;
  readonly side: 'left' | 'right';
  readonly fromA: Taped;
  readonly fromB: Taped;
}

export function offsets(
  { frame, ground }: Pick<SiteOutdoors, 'frame' | 'ground'>,
  { a, b }: ReferenceLine,
  place: LonLat,
): Offsets {
  const { alongM, rightM } = alongAndRight(a.lonLat, b.lonLat, place);
  const foot = destination(a.lonLat, azimuthDeg(a.lonLat, b.lonLat), alongM);
  return {
    alongLine: tapedDistance(frame, ground, a.lonLat, foot),
    backwards: alongM < 0,
    square: tapedDistance(frame, ground, foot, place),
    foot,
    side: rightM < 0 ? 'left' : 'right',
    fromA: tapedDistance(frame, ground, a.lonLat, place),
    fromB: tapedDistance(frame, ground, b.lonLat, place),
  };
}

/** A long surveyor's tape. Common practice, no source. */
const TAPE_M = 50;
/** Beyond this a right angle laid out by eye or by 3-4-5 is off by more than a hand's breadth. Common practice, no source. */
const LONG_SQUARE_M = 20;

/** What is awkward about taping a place; often nothing. */
export function tapeCautions({ alongLine, square, fromA, fromB }: Offsets): string[] {
  if (Math.max(alongLine.tapeM, square.tapeM) > TAPE_M)
    return ['further than a long tape reaches: move the tape on, or take another line'];
  return square.tapeM > LONG_SQUARE_M && Math.max(fromA.tapeM, fromB.tapeM) <= TAPE_M
    ? ['far to square off: check it by the two tapes']
    : [];
}
