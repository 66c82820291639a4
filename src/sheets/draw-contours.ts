import { contourIntervalM, contourLines } from '../geo/contours.ts';
import type { Grid } from '../numeric/grid.ts';
import { cellsOnPaper, partOnPage } from './grid-on-paper.ts';
import { WATER } from './inks.ts';
import { labelAlong } from './label-along.ts';
import type { MapPlacement } from './map-placement.ts';
import type { Mark } from './page-model.ts';
import type { PlanPageInput } from './plan-input.ts';
import { SIGNS } from './signs.ts';

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
    const label = labelAlong(pointsMm, String(Number(elevationM.toFixed(1))), placement, { ink: WATER });
    if (label) marks.push(label);
    return marks;
  });
}
