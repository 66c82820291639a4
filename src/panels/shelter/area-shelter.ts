import { cellCount } from '../../numeric/grid.ts';
import { featuresOfKind } from '../../site/chosen-features.ts';
import type { SiteFeature } from '../../site/document.ts';
import { patchAreas } from '../../site/patch-areas.ts';
import { areaOfFeatureM2, type CellFigures, figuresInside } from '../../state/area-figures.ts';
import type { AppState } from '../../state/model.ts';
import { fieldShelter } from './field-shelter.ts';

/** The taken field or one of its patches. */
export interface AreaShelter {
  readonly id: SiteFeature['id'];
  readonly name: string;
  readonly areaM2: number;
  /** Share by which the wind is cut in the growing season. */
  readonly cut: CellFigures;
}

type Needs = Pick<AppState, 'document' | 'frame' | 'shelter' | 'layout'>;
let last: { parts: readonly unknown[]; answer: readonly AreaShelter[] } | null = null;

/** The field that is summed up, then the patches drawn on it; empty while nothing is known. The same object while nothing changed. */
export function areaShelter(state: Needs): readonly AreaShelter[] {
  const { document, frame, layout } = state;
  const { result } = state.shelter;
  const parts = [document.features, frame, layout, result];
  if (last && parts.every((part, index) => Object.is(part, last?.parts[index]))) return last.answer;
  const known = fieldShelter(state);
  let answer: readonly AreaShelter[] = [];
  if (known && result) {
    const cut = result.windShare.subarray(0, cellCount(result.grid)).map((share) => 1 - share);
    const drawn = new Map(featuresOfKind(document.features, 'patch').map((patch) => [patch.id, patch]));
    const patches = patchAreas(document, layout, [known.field]).flatMap(({ id, name }): AreaShelter[] => {
      const patch = drawn.get(id);
      const figures = patch ? figuresInside(result.grid, cut, frame, patch) : null;
      return patch && figures ? [{ id, name, areaM2: areaOfFeatureM2(patch), cut: figures }] : [];
    });
    const { field } = known;
    answer = [
      {
        id: field.id,
        name: field.properties.name ?? 'The field',
        areaM2: areaOfFeatureM2(field),
        cut: known.seasons[0],
      },
      ...patches,
    ];
  }
  last = { parts, answer };
  return answer;
}
