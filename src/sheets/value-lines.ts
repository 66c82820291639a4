import { levelLines } from '../numeric/level-lines.ts';
import { cellsOnPaper, partOnPage } from './grid-on-paper.ts';
import { INK, PAPER } from './inks.ts';
import { labelAlong } from './label-along.ts';
import type { MapPlacement } from './map-placement.ts';
import type { Mark, Stroke } from './page-model.ts';
import type { BandMap, PlanPageInput } from './plan-input.ts';

/** Heavier than a band's limit, lighter than a field's outline is long-dashed: it reads without colour. */
export const VALUE_LINE: Stroke = { ink: INK, widthMm: 0.5 };
/** Paper to both sides carries the line over dark bands and hatching. */
const RIM: Stroke = { ink: PAPER, widthMm: 1.1 };

/** The lines at chosen values of the map, each with its value along it where it is long enough. */
export function valueLines(
  { grid, lines }: BandMap,
  input: PlanPageInput,
  placement: MapPlacement,
): readonly Mark[] {
  const part = lines.length > 0 ? partOnPage(grid, input, placement) : null;
  if (!part) return [];
  const onPaper = cellsOnPaper(part, input, placement);
  const drawn = lines.map(({ value, label }) => ({
    label,
    linesMm: levelLines(part, part.values, value).map((line) => line.map(onPaper)),
  }));
  const along = (stroke: Stroke): Mark[] =>
    drawn.map(({ linesMm }): Mark => ({ mark: 'lines', linesMm, stroke }));
  const labels = drawn.flatMap(({ label, linesMm }) =>
    linesMm.flatMap((line) => labelAlong(line, label, placement, { ink: INK, bold: true }) ?? []),
  );
  return [...along(RIM), ...along(VALUE_LINE), ...labels];
}
