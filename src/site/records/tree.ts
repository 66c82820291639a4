import { z } from 'zod';
import { care } from './care.ts';
import {
  layoutField,
  leafAreaDensityField,
  measuredYearField,
  nameField,
  noteField,
  plantedHeightField,
  plantedYearField,
  removedYearField,
  speciesField,
  statusField,
  varietyField,
} from './common-fields.ts';
import { PLANTED_HEIGHT_M } from './defaults.ts';
import type { KindRecord } from './property-field.ts';
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
const treeProperties = z.looseObject({
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
  /** Where `heightM` was measured after planting. */
  plantedHeightM: positiveM.optional(),
  removedYear: calendarYear.optional(),
  care,
  crownRadiusM: positiveM.optional(),
  crownBaseM: nonNegativeM.optional(),
  crownForm: z.enum(['ellipsoid', 'dome', 'cone', 'cylinder']).optional(),
  leafAreaDensityM2M3: nonNegativeM.optional(),
});
const treeFeature = feature(treeProperties, pointGeometry);
export type TreeFeature = z.infer<typeof treeFeature>;

/** `heightM` and the crown are those of a standing tree of which nothing is known (common practice, no source). */
export const treeDefaults = {
  status: 'existing',
  plantedHeightM: PLANTED_HEIGHT_M,
  heightM: 6,
  /** Crown radius as a share of the height, where neither radius nor species is given. */
  crownRadiusShareOfHeight: 0.25,
  crownForm: 'ellipsoid',
  leafAreaDensityM2M3: 0.5,
} as const;

export const treeRecord = {
  kind: 'tree',
  label: 'tree',
  plural: 'trees',
  geometryTypes: ['Point'],
  schema: treeFeature,
  defaults: treeDefaults,
  fields: [
    {
      key: 'tag',
      label: 'Tag',
      unit: 'text',
      help: 'The letter and number on its label and on the map, such as N4.',
    },
    nameField,
    statusField,
    speciesField,
    varietyField,
    {
      key: 'rootstock',
      label: 'Rootstock',
      unit: 'rootstock',
      help: 'What it is grafted on; it scales height and spread; empty: grown on its own roots.',
    },
    {
      key: 'heightM',
      label: 'Height',
      unit: 'm',
      help: `From the ground to the top; empty: ${PLANTED_HEIGHT_M} m if it is planted, ${treeDefaults.heightM} m if it stands.`,
      min: 0,
      aboveMin: true,
      max: 120,
    },
    measuredYearField,
    plantedYearField,
    plantedHeightField,
    removedYearField,
    {
      key: 'crownRadiusM',
      label: 'Crown radius',
      unit: 'm',
      help: 'From the stem to the edge of the leaves, at the given height; empty: from the height.',
      min: 0,
      aboveMin: true,
      max: 40,
    },
    {
      key: 'crownBaseM',
      label: 'Lowest leaves at',
      unit: 'm',
      help: 'Height of the lowest leaves above the ground: a clear stem lets light in from the side; empty: as the species has it.',
      min: 0,
      max: 60,
    },
    {
      key: 'crownForm',
      label: 'Shape of the crown',
      unit: 'choice',
      help: 'The outline seen from the side; empty: as the species has it.',
      choices: [
        { value: 'ellipsoid', label: 'egg' },
        { value: 'dome', label: 'dome, flat below' },
        { value: 'cone', label: 'cone' },
        { value: 'cylinder', label: 'column' },
      ],
    },
    { ...leafAreaDensityField, max: 10 },
    {
      key: 'source',
      label: 'Where it comes from',
      unit: 'text',
      help: 'A nursery, own seedling, graft or cutting.',
      detail: true,
    },
    {
      key: 'state',
      label: 'How it is doing',
      unit: 'text',
      help: 'Health, damage, what to look at; a shade figure never means that a tree is sound.',
      detail: true,
    },
    layoutField,
    noteField,
  ],
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
