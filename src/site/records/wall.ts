import { z } from 'zod';
import { calendarYear, commonProperties, feature, lineGeometry, positiveM, share } from './shared.ts';

/** A wall, fence or net; porosity 0 is solid. It stands from `fromYear` until `toYear`, both included. */
export const wallProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('wall'),
  heightM: positiveM.optional(),
  opticalPorosity: share.optional(),
  fromYear: calendarYear.optional(),
  toYear: calendarYear.optional(),
});
export const wallFeature = feature('wall', wallProperties, lineGeometry);
export type WallFeature = z.infer<typeof wallFeature>;
