import { z } from 'zod';
import { woodyStandProperties } from './belt.ts';
import { commonProperties, feature, nonNegativeM, polygonGeometry } from './shared.ts';

/** A wood or block of trees. Leaf-area density serves light, optical porosity serves wind. */
export const blockProperties = z.looseObject({
  ...commonProperties,
  ...woodyStandProperties,
  kind: z.literal('block'),
  leafAreaDensityM2M3: nonNegativeM.optional(),
});
export const blockFeature = feature('block', blockProperties, polygonGeometry);
export type BlockFeature = z.infer<typeof blockFeature>;
