import { z } from 'zod';
import { share } from './shared.ts';

/** What a field can be asked for, or be ranked by; src/choose/measures.ts says how each is worked out. */
export const CHOOSING_MEASURES = [
  'areaM2',
  'slopeDeg',
  'wetness',
  'hollowShare',
  'dammedShare',
  'toAccessM',
  'toWaterM',
  'windCutGrowing',
  'windCutRest',
  'galeHours',
  'sunHoursGrowing',
  'sunHoursMidwinter',
  'lightGrowing',
  'lightMidwinter',
  'litM2',
  'shelteredM2',
  'bothM2',
  'shelteredFromYear',
  'beltNeededM',
  'borrowedShare',
] as const;
export type ChoosingMeasure = (typeof CHOOSING_MEASURES)[number];

/** Years after the base year at which a field is looked at with its planned belts. */
export const CHOOSING_YEARS = [0, 10, 20] as const;

const matter = z.looseObject({
  measure: z.enum(CHOOSING_MEASURES),
  /** With planned belts in this year after the base year; absent or null: as it stands. */
  year: z.literal(CHOOSING_YEARS).nullish(),
});
/** A measure, and the state in which it is looked at. */
export type Matter = z.infer<typeof matter>;

const knockOut = matter
  .extend({ atLeast: z.number().optional(), atMost: z.number().optional() })
  .refine(({ atLeast, atMost }) => (atLeast === undefined) !== (atMost === undefined), {
    error: 'either atLeast or atMost, a number in the unit of the measure',
  });
/** A condition without which a field is out of the question; in the measure's own unit, shares 0 to 1. */
export type KnockOut = z.infer<typeof knockOut>;

/** How a person chooses between fields. */
export const choosingRecord = z.looseObject({
  knockOuts: z.array(knockOut).optional(),
  /** What matters, the most important first; what is not in it does not count. */
  order: z.array(matter).optional(),
  /** Above which light, and from which cut of the growing season's wind on, ground has enough. */
  enough: z.looseObject({ light: share.optional(), windCut: share.optional() }).optional(),
});

/** What is taken where a person has said nothing: fruiting light, and a cut that fruit notices. Common practice, no source. */
export const choosingDefaults = {
  enough: { light: 0.68, windCut: 0.3 },
  order: [
    { measure: 'bothM2' },
    { measure: 'hollowShare' },
    { measure: 'shelteredFromYear' },
    { measure: 'borrowedShare' },
    { measure: 'lightMidwinter' },
    { measure: 'slopeDeg' },
    { measure: 'toAccessM' },
  ],
} as const satisfies { readonly enough: object; readonly order: readonly Matter[] };
