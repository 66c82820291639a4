import { cellCount } from '../../numeric/grid.ts';
import { takenField } from '../../site/chosen-features.ts';
import type { FeatureOf } from '../../site/document.ts';
import { type CellFigures, fieldsOf, figuresInside } from '../../state/area-figures.ts';
import type { AppState } from '../../state/model.ts';

export interface FieldShelter {
  readonly field: FeatureOf<'field'>;
  /** Share by which the wind is cut: growing season, rest of the year, whole year. */
  readonly seasons: readonly [CellFigures, CellFigures, CellFigures];
}

type Needs = Pick<AppState, 'document' | 'frame' | 'shelter'>;
let last: { parts: readonly unknown[]; answer: FieldShelter | null } | null = null;

/** Shelter of the taken field, or of the first; null while it is not known. The same object while nothing changed. */
export function fieldShelter({ document, frame, shelter }: Needs): FieldShelter | null {
  const parts = [document.features, frame, shelter.result];
  if (last && parts.every((part, index) => Object.is(part, last?.parts[index]))) return last.answer;
  const field = takenField(document) ?? fieldsOf(document)[0];
  const { result } = shelter;
  let answer: FieldShelter | null = null;
  if (field && result) {
    const cells = cellCount(result.grid);
    const season = (band: number) =>
      figuresInside(
        result.grid,
        result.windShare.subarray(band * cells, (band + 1) * cells).map((share) => 1 - share),
        frame,
        field,
      );
    const [growing, rest, year] = [season(0), season(1), season(2)];
    if (growing && rest && year) answer = { field, seasons: [growing, rest, year] };
  }
  last = { parts, answer };
  return answer;
}
