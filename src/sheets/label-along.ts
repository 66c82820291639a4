import { radToDeg } from '../units/angle.ts';
import type { MapPlacement } from './map-placement.ts';
import type { PointMm, TextMark } from './page-model.ts';

const LABEL_MM = 2.1;
/** A shorter line carries no label. */
const LABELLED_FROM_MM = 30;
/** A label keeps this far from the frame. */
const FROM_FRAME_MM = 4;

/** What a line stands for, along its middle, where the line is long enough to carry it inside the frame. */
export function labelAlong(
  points: readonly PointMm[],
  text: string,
  { boxMm }: MapPlacement,
  style: Pick<TextMark, 'ink' | 'bold'>,
): TextMark | null {
  const shown = points.filter(
    ([x, y]) =>
      x > boxMm.xMm + FROM_FRAME_MM &&
      x < boxMm.xMm + boxMm.widthMm - FROM_FRAME_MM &&
      y > boxMm.yMm + FROM_FRAME_MM &&
      y < boxMm.yMm + boxMm.heightMm - FROM_FRAME_MM,
  );
  if (shown.length < 2) return null;
  let lengthMm = 0;
  for (let i = 1; i < shown.length; i++)
    lengthMm += Math.hypot(shown[i][0] - shown[i - 1][0], shown[i][1] - shown[i - 1][1]);
  if (lengthMm < LABELLED_FROM_MM) return null;
  const at = Math.floor(shown.length / 2);
  const before = shown[Math.max(0, at - 3)];
  const after = shown[Math.min(shown.length - 1, at + 3)];
  let turnDeg = radToDeg(Math.atan2(after[1] - before[1], after[0] - before[0]));
  if (turnDeg > 90) turnDeg -= 180;
  if (turnDeg < -90) turnDeg += 180;
  return {
    mark: 'text',
    atMm: shown[at],
    text,
    sizeMm: LABEL_MM,
    anchor: 'middle',
    turnDeg,
    haloMm: 0.4,
    ...style,
  };
}
