import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { LayoutComparison, LayoutSide } from './comparison.ts';
import { costsOf } from './costs.ts';
import { holdingsOf, type LayoutName } from './holdings.ts';
import { whatDiffers } from './what-differs.ts';

/** Which layouts, in which year, and how much of the field is to be in shelter. */
export interface LayoutsAsked {
  readonly layouts: readonly [LayoutName, LayoutName];
  readonly year: number;
  readonly wantedShare: number;
}

/** What the engines answered of one layout. */
export type LayoutAnswers = Pick<LayoutSide, 'figures' | 'years'>;

/** Puts what the document says of two layouts beside what the engines answered. */
export function comparisonOf(
  document: SiteDocument,
  field: FieldFeature,
  { layouts: [a, b], year, wantedShare }: LayoutsAsked,
  [ofA, ofB]: readonly [LayoutAnswers, LayoutAnswers],
): LayoutComparison {
  const side = (layout: LayoutName, answers: LayoutAnswers): LayoutSide => {
    const holdings = holdingsOf(document, layout);
    return { layout, holdings, costs: costsOf(holdings, document.site.prices), ...answers };
  };
  return {
    baseYear: document.site.baseYear,
    fieldName: field.properties.name ?? `Field ${field.id}`,
    year,
    wantedShare,
    currency: document.site.prices?.currency ?? '',
    sides: [side(a, ofA), side(b, ofB)],
    differs: whatDiffers(document, a, b),
  };
}
