import { featuresOfKind, fieldNamed, takenField } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import { placesOf } from '../site/places.ts';
import { isInside, type XY } from '../site/plane-geometry.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { type LayoutName, ownFeatures } from './holdings.ts';

/**
 * The field that two layouts are compared on: the one that is named, else the one on which most of their own things
 * stand, else the one that is taken, else the first; null where none is drawn.
 * @throws BadInputError when there is no field of that name
 */
export function comparedField(
  document: SiteDocument,
  layouts: readonly LayoutName[],
  named?: string,
): FieldFeature | null {
  if (named !== undefined) return fieldNamed(document, named);
  const fields = featuresOfKind(document.features, 'field');
  const own = layouts.flatMap((layout) => ownFeatures(document, layout));
  let most = 0;
  let found = takenField(document) ?? fields[0] ?? null;
  for (const field of fields) {
    // Degrees serve as a plane here: only inside or outside is asked.
    const rings = field.geometry.coordinates as unknown as XY[][];
    const inside = own.filter(({ geometry }) =>
      [...placesOf(geometry.coordinates)].some(([lon, lat]) => isInside([lon, lat], rings)),
    ).length;
    if (inside <= most) continue;
    most = inside;
    found = field;
  }
  return found;
}
