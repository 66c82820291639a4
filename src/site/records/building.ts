import { z } from 'zod';
import { commonProperties, feature, polygonGeometry, positiveM } from './shared.ts';

export const buildingProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('building'),
  heightM: positiveM.optional(),
});
export const buildingFeature = feature('building', buildingProperties, polygonGeometry);
export type BuildingFeature = z.infer<typeof buildingFeature>;
