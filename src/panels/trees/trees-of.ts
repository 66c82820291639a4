import { chosenFeatures, featuresOfKind } from '../../site/chosen-features.ts';
import type { FeatureOf, SiteDocument } from '../../site/document.ts';

/** The trees of a layout over the common ones. */
export const treesOf = (document: SiteDocument, layout: string | null): readonly FeatureOf<'tree'>[] =>
  featuresOfKind(chosenFeatures(document, layout), 'tree');
