import { z } from 'zod';
import { woodyStandDefaults, woodyStandFields, woodyStandProperties } from './belt.ts';
import { leafAreaDensityField } from './common-fields.ts';
import type { KindRecord } from './property-field.ts';
import { commonProperties, feature, nonNegativeM, polygonGeometry } from './shared.ts';

/** A wood or block of trees. Leaf-area density serves light, optical porosity serves wind. */
const blockProperties = z.looseObject({
  ...commonProperties,
  ...woodyStandProperties,
  kind: z.literal('block'),
  leafAreaDensityM2M3: nonNegativeM.optional(),
});
const blockFeature = feature(blockProperties, polygonGeometry);
export type BlockFeature = z.infer<typeof blockFeature>;

export const blockDefaults = { ...woodyStandDefaults, heightM: 12, leafAreaDensityM2M3: 0.5 } as const;

export const blockRecord = {
  kind: 'block',
  label: 'wood or block',
  plural: 'woods and blocks',
  geometryTypes: ['Polygon'],
  schema: blockFeature,
  defaults: blockDefaults,
  fields: woodyStandFields([{ ...leafAreaDensityField, max: 10 }], blockDefaults.heightM),
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
