import { z } from 'zod';
import { commonProperties, feature, nonNegativeM, polygonGeometry, share } from './shared.ts';

/** An area of understorey. `lightShareToKeep` overrides the site's light to keep. */
export const patchProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('patch'),
  layer: z.enum(['ground', 'shrub']).optional(),
  readingHeightM: nonNegativeM.optional(),
  lightShareToKeep: share.optional(),
});
export const patchFeature = feature('patch', patchProperties, polygonGeometry);
export type PatchFeature = z.infer<typeof patchFeature>;
