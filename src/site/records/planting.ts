import { z } from 'zod';
import { layoutField, nameField, noteField, speciesField, varietyField, yearField } from './common-fields.ts';
import type { KindRecord } from './property-field.ts';
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
const plantingProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('planting'),
  species: z.string().optional(),
  variety: z.string().optional(),
  count: z.number().int().positive().optional(),
  spacingM: positiveM.optional(),
  plantedYear: calendarYear.optional(),
});
const plantingFeature = feature(plantingProperties, z.union([pointGeometry, lineGeometry, polygonGeometry]));
export type PlantingFeature = z.infer<typeof plantingFeature>;

export const plantingRecord = {
  kind: 'planting',
  label: 'planting',
  plural: 'plantings',
  geometryTypes: ['Point', 'LineString', 'Polygon'],
  schema: plantingFeature,
  defaults: {},
  fields: [
    nameField,
    { ...speciesField, help: 'Botanical name from the catalogue.' },
    varietyField,
    {
      key: 'count',
      label: 'How many plants',
      unit: 'count',
      help: 'The number of plants; leave it empty where a spacing is given.',
      min: 1,
      max: 100000,
    },
    {
      key: 'spacingM',
      label: 'Distance between plants',
      unit: 'm',
      help: 'Along a row, or both ways in an area; leave it empty where a number is given.',
      min: 0,
      aboveMin: true,
      max: 100,
    },
    yearField('plantedYear', 'Planted in', 'The year of planting.'),
    layoutField,
    noteField,
  ],
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
