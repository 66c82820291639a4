import { z } from 'zod';
import {
  calendarYear,
  commonProperties,
  feature,
  lineGeometry,
  nonNegativeM,
  positiveM,
  share,
  status,
} from './shared.ts';

/** What a belt and a block have in common. */
export const woodyStandProperties = {
  status: status.optional(),
  owner: z.string().optional(),
  /** Botanical name in the catalogue; without one nothing grows. */
  species: z.string().optional(),
  heightM: positiveM.optional(),
  measuredYear: calendarYear.optional(),
  plantedYear: calendarYear.optional(),
  removedYear: calendarYear.optional(),
  /** Open space below the foliage. */
  baseHeightM: nonNegativeM.optional(),
  opticalPorosityLeafOn: share.optional(),
  opticalPorosityLeafOff: share.optional(),
};

/** A row or strip of woody plants. */
export const beltProperties = z.looseObject({
  ...commonProperties,
  ...woodyStandProperties,
  kind: z.literal('belt'),
  widthM: positiveM.optional(),
});
export const beltFeature = feature('belt', beltProperties, lineGeometry);
export type BeltFeature = z.infer<typeof beltFeature>;
