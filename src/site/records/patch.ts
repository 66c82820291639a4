import { z } from 'zod';
import { layoutField, nameField, noteField, shareField } from './common-fields.ts';
import type { KindRecord } from './property-field.ts';
import { commonProperties, feature, nonNegativeM, polygonGeometry, share } from './shared.ts';

/** An area of understorey. `lightShareToKeep` overrides the site's light to keep. */
const patchProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('patch'),
  layer: z.enum(['ground', 'shrub']).optional(),
  readingHeightM: nonNegativeM.optional(),
  lightShareToKeep: share.optional(),
});
const patchFeature = feature(patchProperties, polygonGeometry);
export type PatchFeature = z.infer<typeof patchFeature>;

/** The reading height follows the layer; that of shrubs is their usual middle (common practice, no source). */
export const patchDefaults = {
  layer: 'ground',
  readingHeightMByLayer: { ground: 0.1, shrub: 1 },
} as const;

export const patchRecord = {
  kind: 'patch',
  label: 'patch',
  plural: 'patches',
  geometryTypes: ['Polygon'],
  schema: patchFeature,
  defaults: patchDefaults,
  fields: [
    nameField,
    {
      key: 'layer',
      label: 'What grows here',
      unit: 'choice',
      help: 'Decides at what height light is read, unless a height is given.',
      choices: [
        { value: 'ground', label: 'low plants' },
        { value: 'shrub', label: 'shrubs' },
      ],
    },
    shareField(
      'lightShareToKeep',
      'Light to keep',
      'The share of open light that most of this patch must keep; empty: as the whole site.',
    ),
    {
      key: 'readingHeightM',
      label: 'Height at which light is read',
      unit: 'm',
      help: `Above the ground; empty: ${patchDefaults.readingHeightMByLayer.ground} m for low plants, ${patchDefaults.readingHeightMByLayer.shrub} m for shrubs.`,
      min: 0,
      max: 10,
      detail: true,
    },
    layoutField,
    noteField,
  ],
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
