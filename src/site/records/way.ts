import { z } from 'zod';
import { layoutField, nameField, noteField } from './common-fields.ts';
import type { KindRecord, PropertyField } from './property-field.ts';
import { commonProperties, feature, lineGeometry, nonNegativeM, polygonGeometry } from './shared.ts';

/** Paths, ground kept free, and lines and drains: nothing is planted within `offsetM` of them. */
const wayProperties = <K extends 'path' | 'keepOut' | 'service'>(kind: K) =>
  z.looseObject({
    ...commonProperties,
    kind: z.literal(kind),
    offsetM: nonNegativeM.optional(),
    reason: z.string().optional(),
    water: z.enum(['yes', 'no']).optional(),
  });
const wayGeometry = z.union([lineGeometry, polygonGeometry]);
const pathFeature = feature(wayProperties('path'), wayGeometry);
const keepOutFeature = feature(wayProperties('keepOut'), wayGeometry);
const serviceFeature = feature(wayProperties('service'), wayGeometry);
export type PathFeature = z.infer<typeof pathFeature>;
export type KeepOutFeature = z.infer<typeof keepOutFeature>;
export type ServiceFeature = z.infer<typeof serviceFeature>;

/** Ground kept free on each side of a line, and around an area (common practice, no source). */
export const pathDefaults = { offsetM: 0.6 } as const;
export const keepOutDefaults = { offsetM: 0 } as const;
export const serviceDefaults = { offsetM: 3 } as const;

const waterField: PropertyField = {
  key: 'water',
  label: 'Water can be drawn there',
  unit: 'choice',
  help: 'Counts for how far fields are from water; empty: where it is called a pond, a well, a brook or the like.',
  choices: [
    { value: 'yes', label: 'yes' },
    { value: 'no', label: 'no' },
  ],
};

const wayFields = (defaultOffsetM: number, reasonHelp: string): PropertyField[] => [
  nameField,
  {
    key: 'offsetM',
    label: 'Nothing planted within',
    unit: 'm',
    help: `Distance kept free on either side; empty: ${defaultOffsetM} m.`,
    min: 0,
    max: 200,
  },
  { key: 'reason', label: 'What or why', unit: 'text', help: reasonHelp },
  waterField,
  layoutField,
  noteField,
];

export const pathRecord = {
  kind: 'path',
  label: 'path',
  plural: 'paths',
  geometryTypes: ['LineString', 'Polygon'],
  schema: pathFeature,
  defaults: pathDefaults,
  fields: wayFields(
    pathDefaults.offsetM,
    'A footpath, a track for the barrow or the tractor, a right of way.',
  ),
} satisfies KindRecord & { schema: z.ZodType; defaults: object };

export const keepOutRecord = {
  kind: 'keepOut',
  label: 'ground kept free',
  plural: 'ground kept free',
  geometryTypes: ['LineString', 'Polygon'],
  schema: keepOutFeature,
  defaults: keepOutDefaults,
  fields: wayFields(keepOutDefaults.offsetM, 'A gate, a view, a pond, flower-rich grass, a boundary strip.'),
} satisfies KindRecord & { schema: z.ZodType; defaults: object };

export const serviceRecord = {
  kind: 'service',
  label: 'line or drain',
  plural: 'lines and drains',
  geometryTypes: ['LineString', 'Polygon'],
  schema: serviceFeature,
  defaults: serviceDefaults,
  fields: wayFields(
    serviceDefaults.offsetM,
    'An overhead line, a buried cable, a water pipe, a drain: ask its owner for the distance to keep.',
  ),
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
