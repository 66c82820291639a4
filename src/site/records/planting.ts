import { z } from 'zod';
import {
  calendarYear,
  commonProperties,
  feature,
  lineGeometry,
  pointGeometry,
  polygonGeometry,
  positiveM,
} from './shared.ts';

/** Understorey plants: one, a row, or an area. */
export const plantingProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('planting'),
  species: z.string().optional(),
  variety: z.string().optional(),
  count: z.number().int().positive().optional(),
  spacingM: positiveM.optional(),
  plantedYear: calendarYear.optional(),
});
export const plantingFeature = feature(
  'planting',
  plantingProperties,
  z.union([pointGeometry, lineGeometry, polygonGeometry]),
);
export type PlantingFeature = z.infer<typeof plantingFeature>;
