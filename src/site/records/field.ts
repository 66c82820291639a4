import { z } from 'zod';
import { nameField, noteField } from './common-fields.ts';
import type { KindRecord } from './property-field.ts';
import { commonProperties, feature, polygonGeometry } from './shared.ts';

/** A candidate parcel; one is taken. */
const fieldProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('field'),
  taken: z.boolean().optional(),
});
const fieldFeature = feature(fieldProperties, polygonGeometry);
export type FieldFeature = z.infer<typeof fieldFeature>;

const fieldDefaults = { taken: false } as const;

export const fieldRecord = {
  kind: 'field',
  label: 'field',
  plural: 'fields',
  geometryTypes: ['Polygon'],
  schema: fieldFeature,
  defaults: fieldDefaults,
  fields: [
    nameField,
    {
      key: 'taken',
      label: 'This field is taken',
      unit: 'yesNo',
      help: 'The field the garden is planned on; the others stay on the map to compare.',
    },
    noteField,
  ],
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
