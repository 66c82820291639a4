import { z } from 'zod';
import { care } from './care.ts';
import {
  alsoSpeciesField,
  layoutField,
  measuredYearField,
  nameField,
  noteField,
  plantedHeightField,
  plantedYearField,
  removedYearField,
  shareField,
  speciesField,
  statusField,
} from './common-fields.ts';
import { leafOffPorosity, PLANTED_HEIGHT_M, POROSITY_LEAF_ON } from './defaults.ts';
import type { KindRecord, PropertyField } from './property-field.ts';
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

/** What a belt is for: crops and soil, or buildings, stock and people. It decides how dense it should be. */
export const BELT_PURPOSES = ['crops', 'stock'] as const;
export type BeltPurpose = (typeof BELT_PURPOSES)[number];

/** What a belt and a block have in common. */
export const woodyStandProperties = {
  status: status.optional(),
  owner: z.string().optional(),
  purpose: z.enum(BELT_PURPOSES).optional(),
  /** Botanical name in the catalogue; without one nothing grows. */
  species: z.string().optional(),
  /** Botanical names of what else grows in it; the first, `species`, alone sets growth and foliage. */
  alsoSpecies: z.array(z.string()).optional(),
  heightM: positiveM.optional(),
  measuredYear: calendarYear.optional(),
  plantedYear: calendarYear.optional(),
  /** Where `heightM` was measured after planting. */
  plantedHeightM: positiveM.optional(),
  removedYear: calendarYear.optional(),
  care,
  /** Open space below the foliage. */
  baseHeightM: nonNegativeM.optional(),
  opticalPorosityLeafOn: share.optional(),
  opticalPorosityLeafOff: share.optional(),
};

/** A row or strip of woody plants. */
const beltProperties = z.looseObject({
  ...commonProperties,
  ...woodyStandProperties,
  kind: z.literal('belt'),
  widthM: positiveM.optional(),
});
const beltFeature = feature(beltProperties, lineGeometry);
export type BeltFeature = z.infer<typeof beltFeature>;

/** For belts and blocks. `heightM` is that of a standing one whose height nobody has given (common practice, no source). */
export const woodyStandDefaults = {
  status: 'existing',
  purpose: 'crops',
  plantedHeightM: PLANTED_HEIGHT_M,
  baseHeightM: 0,
  opticalPorosityLeafOn: POROSITY_LEAF_ON,
  /** For those that drop their leaves. */
  opticalPorosityLeafOff: leafOffPorosity(POROSITY_LEAF_ON),
} as const;
export const beltDefaults = { ...woodyStandDefaults, heightM: 6, widthM: 3 } as const;

const ownerField: PropertyField = {
  key: 'owner',
  label: 'Whose is it',
  unit: 'text',
  help: 'Who decides about it: what a neighbour owns, a neighbour may fell.',
};

const purposeField: PropertyField = {
  key: 'purpose',
  label: 'What it is for',
  unit: 'choice',
  help: 'It changes no figure, but what is said of how dense it is; usual: crops.',
  choices: [
    { value: 'crops', label: 'crops and soil' },
    { value: 'stock', label: 'buildings, stock or people' },
  ],
};

/** The form of a belt or block, with its own field for how far it reaches sideways, if it has one. */
export const woodyStandFields = (own: readonly PropertyField[], standingHeightM: number): PropertyField[] => [
  nameField,
  statusField,
  speciesField,
  alsoSpeciesField,
  {
    key: 'heightM',
    label: 'Height',
    unit: 'm',
    help: `From the ground to the top; empty: ${PLANTED_HEIGHT_M} m if it is planted, ${standingHeightM} m if it stands.`,
    min: 0,
    aboveMin: true,
    max: 120,
  },
  measuredYearField,
  plantedYearField,
  plantedHeightField,
  removedYearField,
  ...own,
  {
    key: 'baseHeightM',
    label: 'Open below, up to',
    unit: 'm',
    help: 'Height of the gap under the lowest leaves, through which light and wind pass; empty: none.',
    min: 0,
    max: 60,
  },
  shareField(
    'opticalPorosityLeafOn',
    'How much daylight shows through, in leaf',
    'Look straight at it from a distance: the part of it through which you see the sky; empty: 40 %.',
  ),
  shareField(
    'opticalPorosityLeafOff',
    'How much daylight shows through, in winter',
    'The same without leaves; empty: as the species has it.',
  ),
  purposeField,
  ownerField,
  layoutField,
  noteField,
];

export const beltRecord = {
  kind: 'belt',
  label: 'belt',
  plural: 'belts',
  geometryTypes: ['LineString'],
  schema: beltFeature,
  defaults: beltDefaults,
  fields: woodyStandFields(
    [
      {
        key: 'widthM',
        label: 'Width',
        unit: 'm',
        help: `From leaf to leaf across it; empty: ${beltDefaults.widthM} m.`,
        min: 0,
        aboveMin: true,
        max: 200,
      },
    ],
    beltDefaults.heightM,
  ),
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
