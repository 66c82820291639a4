import { z } from 'zod';
import { commonProperties, feature, pointGeometry } from './shared.ts';

/** A reading taken outside: what, how much, when, how. */
export const measureProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('measure'),
  quantity: z.enum(['height', 'light', 'wind', 'elevation']).optional(),
  /** Metres, share of open light, or share of open wind, as `quantity` says. */
  value: z.number().optional(),
  date: z.string().optional(),
  method: z.string().optional(),
});
export const measureFeature = feature('measure', measureProperties, pointGeometry);
export type MeasureFeature = z.infer<typeof measureFeature>;
