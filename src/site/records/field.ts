import { z } from 'zod';
import { commonProperties, feature, polygonGeometry } from './shared.ts';

/** A candidate parcel; one is taken. */
export const fieldProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('field'),
  taken: z.boolean().optional(),
});
export const fieldFeature = feature('field', fieldProperties, polygonGeometry);
export type FieldFeature = z.infer<typeof fieldFeature>;
