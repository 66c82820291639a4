import { z } from 'zod';
import { layoutField, nameField, noteField, shareField, yearField } from './common-fields.ts';
import type { KindRecord } from './property-field.ts';
import { calendarYear, commonProperties, feature, lineGeometry, positiveM, share } from './shared.ts';

/** A wall, fence or net; porosity 0 is solid. It stands from `fromYear` until `toYear`, both included. */
const wallProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('wall'),
  heightM: positiveM.optional(),
  opticalPorosity: share.optional(),
  fromYear: calendarYear.optional(),
  toYear: calendarYear.optional(),
});
const wallFeature = feature(wallProperties, lineGeometry);
export type WallFeature = z.infer<typeof wallFeature>;

/** The height of a garden wall (common practice, no source). */
export const wallDefaults = { heightM: 2, opticalPorosity: 0 } as const;

export const wallRecord = {
  kind: 'wall',
  label: 'wall, fence or net',
  plural: 'walls, fences and nets',
  geometryTypes: ['LineString'],
  schema: wallFeature,
  defaults: wallDefaults,
  fields: [
    nameField,
    {
      key: 'heightM',
      label: 'Height',
      unit: 'm',
      help: `From the ground to the top; empty: ${wallDefaults.heightM} m.`,
      min: 0,
      aboveMin: true,
      max: 60,
    },
    shareField(
      'opticalPorosity',
      'How much daylight shows through',
      'None for a wall, about half for a windbreak net; empty: none.',
    ),
    yearField('fromYear', 'Stands from', 'The first year in which it stands; empty: it has always stood.'),
    yearField('toYear', 'Stands until', 'The last year in which it stands; empty: it stays.'),
    layoutField,
    noteField,
  ],
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
