import { z } from 'zod';
import { layoutField, nameField, noteField } from './common-fields.ts';
import type { KindRecord } from './property-field.ts';
import { commonProperties, feature, polygonGeometry, positiveM } from './shared.ts';

const buildingProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('building'),
  heightM: positiveM.optional(),
});
const buildingFeature = feature(buildingProperties, polygonGeometry);
export type BuildingFeature = z.infer<typeof buildingFeature>;

/** A house to half its roof (common practice, no source). */
export const buildingDefaults = { heightM: 6 } as const;

export const buildingRecord = {
  kind: 'building',
  label: 'building',
  plural: 'buildings',
  geometryTypes: ['Polygon'],
  schema: buildingFeature,
  defaults: buildingDefaults,
  fields: [
    nameField,
    {
      key: 'heightM',
      label: 'Height',
      unit: 'm',
      help: `A flat-topped box of this height; for a pitched roof take the middle of eaves and ridge; empty: ${buildingDefaults.heightM} m.`,
      min: 0,
      aboveMin: true,
      max: 300,
    },
    layoutField,
    noteField,
  ],
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
