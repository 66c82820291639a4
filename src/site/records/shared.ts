import { z } from 'zod';
import { MAX_YEAR, MIN_YEAR } from './common-fields.ts';

export const share = z.number().min(0).max(1);
export const positiveM = z.number().positive();
export const nonNegativeM = z.number().min(0);
export const calendarYear = z.number().int().min(MIN_YEAR).max(MAX_YEAR);
export const monthDay = z
  .string()
  .regex(
    /^(0[1-9]|1[0-2])-(0[1-9]|1\d|2[0-8])$|^(0[13-9]|1[0-2])-(29|30)$|^(0[13578]|1[02])-31$/,
    'a month and day such as 04-01',
  );
export const isoDate = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])/, 'a date such as 2027-06-21');
export const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a clock time such as 09:40');

const position = z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]).rest(z.number());
export const pointGeometry = z.looseObject({ type: z.literal('Point'), coordinates: position });
export const lineGeometry = z.looseObject({
  type: z.literal('LineString'),
  coordinates: z.array(position).min(2),
});
export const polygonGeometry = z.looseObject({
  type: z.literal('Polygon'),
  coordinates: z.array(z.array(position).min(4)).min(1),
});

export const status = z.enum(['existing', 'planned']);

/** Members every feature may carry. `layout` puts it in one alternative design; without it the feature is common to all. */
export const commonProperties = {
  layout: z.string().optional(),
  name: z.string().optional(),
  note: z.string().optional(),
};

export const feature = <P extends z.ZodType, G extends z.ZodType>(properties: P, geometry: G) =>
  z.looseObject({ type: z.literal('Feature'), id: z.union([z.string(), z.number()]), geometry, properties });
