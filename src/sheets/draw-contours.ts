import { contourIntervalM, contourLines } from '../geo/contours.ts';
import type { Grid } from '../numeric/grid.ts';
import { radToDeg } from '../units/angle.ts';
import { cellsOnPaper, partOnPage } from './grid-on-paper.ts';
import { WATER } from './inks.ts';
import type { MapPlacement } from './map-placement.ts';
import type { Mark, PointMm, TextMark } from './page-model.ts';
import type { PlanPageInput } from './plan-input.ts';
import { SIGNS } from './signs.ts';

const LABEL_MM = 2.1;
/** A shorter line carries no height. */
const LABELLED_FROM_MM = 30;

/** Lines of equal elevation, some of them with their height in metres. */
export function drawContours(ground: Grid, input: PlanPageInput, placement: MapPlacement): Mark[] {
  const part = partOnPage(ground, input, placement);
  if (!part) return [];
  const onPaper = cellsOnPaper(part, input, placement);
  return contourLines(part, contourIntervalM(part)).flatMap(({ elevationM, line }) => {
    const pointsMm = line.map(([x, y]) =>
      onPaper([(x - part.westM) / part.cellM, (part.northM - y) / part.cellM]),
    );
    const marks: Mark[] = [{ mark: 'line', pointsMm, stroke: SIGNS.contour.stroke }];
    const label = contourLabel(pointsMm, elevationM, placement);
    if (label) marks.push(label);
    return marks;
  });
}

/** The height, along the line's middle, where the line is long enough to carry it inside the frame. */
function contourLabel(
  points: readonly PointMm[],
  elevationM: number,
  { boxMm }: MapPlacement,
): TextMark | null {
  const shown = points.filter(
    ([x, y]) =>
      x > boxMm.xMm + 4 &&
      x < boxMm.xMm + boxMm.widthMm - 4 &&
      y > boxMm.yMm + 4 &&
      y < boxMm.yMm + boxMm.heightMm - 4,
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
    text: String(Number(elevationM.toFixed(1))),
    sizeMm: LABEL_MM,
    ink: WATER,
    anchor: 'middle',
    turnDeg,
    haloMm: 0.4,
  };
}
