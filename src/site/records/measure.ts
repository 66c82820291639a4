import { z } from 'zod';
import { nameField, noteField } from './common-fields.ts';
import type { KindRecord } from './property-field.ts';
import { commonProperties, feature, isoDate, pointGeometry } from './shared.ts';

/** A reading taken outside: what, how much, when, how. */
const measureProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('measure'),
  quantity: z.enum(['height', 'light', 'wind', 'elevation']).optional(),
  /** Metres, share of open light, or share of open wind, as `quantity` says. */
  value: z.number().optional(),
  date: isoDate.optional(),
  method: z.string().optional(),
});
const measureFeature = feature(measureProperties, pointGeometry);
export type MeasureFeature = z.infer<typeof measureFeature>;

export const measureRecord = {
  kind: 'measure',
  label: 'reading',
  plural: 'readings',
  geometryTypes: ['Point'],
  schema: measureFeature,
  defaults: {},
  fields: [
    nameField,
    {
      key: 'quantity',
      label: 'What was measured',
      unit: 'choice',
      help: 'What the value below is a reading of.',
      choices: [
        { value: 'height', label: 'height of a tree or belt, m' },
        { value: 'light', label: 'light, share of the open (0 to 1)' },
        { value: 'wind', label: 'wind, share of the open (0 to 1)' },
        { value: 'elevation', label: 'height of the ground, m' },
      ],
    },
    {
      key: 'value',
      label: 'Reading',
      unit: 'number',
      help: 'Metres for a height, a share from 0 to 1 for light and wind.',
    },
    { key: 'date', label: 'Taken on', unit: 'date', help: 'The day it was taken.' },
    {
      key: 'method',
      label: 'How',
      unit: 'text',
      help: 'With what and in what weather: a stick, a meter, an overcast noon.',
    },
    noteField,
  ],
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
