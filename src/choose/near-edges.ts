import type { Frame } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { GrownPlan } from '../scene/grown-plan.ts';
import type { SiteDocument } from '../site/document.ts';
import { distanceToLineM, lineEnters } from '../site/plane-geometry.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { type ForeignEdge, foreignEdges } from './field-states.ts';

/** An edge is asked about where it stands within so many of its heights: farther off it gives and takes little. */
const NEAR_H = 25;

/**
 * The edges around a field that are somebody else's.
 * @param plan what stands there as the field stands; @param layout the layout that it stands in.
 */
export function nearEdges(
  document: SiteDocument,
  field: FieldFeature,
  frame: Frame,
  plan: GrownPlan,
  layout: string | null,
): ForeignEdge[] {
  const rings = field.geometry.coordinates.map((ring) => ringToLocal(frame, ring));
  const grown = new Map(plan.things.map((thing) => [thing.id, thing]));
  return foreignEdges(document, layout).filter(({ id }) => {
    const thing = grown.get(id);
    if (!thing) return false;
    const nearM = NEAR_H * thing.heightM;
    return thing.footprint.some((ring) => {
      const outline = ringToLocal(frame, ring);
      // Either way: a small field lies beside the middle of a long belt's side.
      return (
        lineEnters(outline, rings) ||
        outline.some((xy) => distanceToLineM(xy, rings[0]) <= nearM) ||
        rings[0].some((xy) => distanceToLineM(xy, outline) <= nearM)
      );
    });
  });
}
