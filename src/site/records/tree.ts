import { z } from 'zod';
import {
  calendarYear,
  commonProperties,
  feature,
  nonNegativeM,
  pointGeometry,
  positiveM,
  status,
} from './shared.ts';

/** One crown. */
export const treeProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('tree'),
  status: status.optional(),
  /** Letter for the role and a number, such as N4. */
  tag: z.string().optional(),
  species: z.string().optional(),
  variety: z.string().optional(),
  rootstock: z.string().optional(),
  source: z.string().optional(),
  state: z.string().optional(),
  heightM: positiveM.optional(),
  measuredYear: calendarYear.optional(),
  plantedYear: calendarYear.optional(),
  removedYear: calendarYear.optional(),
  crownRadiusM: positiveM.optional(),
  crownBaseM: nonNegativeM.optional(),
  crownForm: z.enum(['ellipsoid', 'dome', 'cone', 'cylinder']).optional(),
  leafAreaDensityM2M3: nonNegativeM.optional(),
});
export const treeFeature = feature('tree', treeProperties, pointGeometry);
export type TreeFeature = z.infer<typeof treeFeature>;
