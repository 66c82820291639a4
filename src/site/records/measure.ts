import { z } from 'zod';
import { nameField, noteField, yearField } from './common-fields.ts';
import type { KindRecord } from './property-field.ts';
import {
  calendarYear,
  clockTime,
  commonProperties,
  feature,
  isoDate,
  nonNegativeM,
  pointGeometry,
  positiveM,
} from './shared.ts';

/** What two hand meters were expected to show at a spot, in writing before anyone measured. Shares of open wind. */
const expectedWind = z.looseObject({
  /** The day it was written for. */
  date: isoDate,
  /** The wind it was written for: where from, degrees clockwise from true north, and how strong at 10 m in the open. */
  windFromDeg: z.number().min(0).max(360),
  windMps: z.number().positive(),
  /** Height of both meters. */
  readingHeightM: nonNegativeM,
  /** Along the wind from the belt, in belt heights, and the belt height it was reckoned with. */
  distanceH: z.number(),
  heightM: positiveM,
  /** The model's figure, and its range with all that is not known of belt, wind and meters. */
  share: z.number().min(0),
  functionLow: z.number().min(0),
  functionHigh: z.number().min(0),
  /** The same stretched over all belts that were ever measured at that distance. */
  low: z.number().min(0),
  high: z.number().min(0),
});
export type ExpectedWind = z.infer<typeof expectedWind>;

/** A reading taken outside: what, how much, when, how. */
const measureProperties = z.looseObject({
  ...commonProperties,
  kind: z.literal('measure'),
  quantity: z.enum(['height', 'light', 'wind', 'elevation', 'shadow']).optional(),
  /**
   * Metres, share of open light, or share of open wind, as `quantity` says. For the tip of a shadow, metres beyond
   * (positive) or short of its stake; the point lies where the tip was seen.
   */
  value: z.number().optional(),
  date: isoDate.optional(),
  /** Clock time there; a shadow's tip means nothing without it. */
  time: clockTime.optional(),
  method: z.string().optional(),
  /** Of a height: the year at the end of whose growing season it counts; absent: as the date says. */
  measuredYear: calendarYear.optional(),
  /** Id of what was measured. */
  of: z.union([z.string(), z.number()]).optional(),
  /** Whose shadow along a line or an outline, metres from its first point; absent: the corner that reaches furthest. */
  alongM: nonNegativeM.optional(),
  /** Metres to the right (positive) or left of the stake, seen away from the sun. */
  asideM: z.number().optional(),
  /** Of a wind reading between two meters: what was written down before, as the model stood then. No value: not read yet. */
  expected: expectedWind.optional(),
  /** Means of the meter in the open and of the one at the spot, m/s; `value` is the second through the first. */
  openMps: z.number().positive().optional(),
  spotMps: z.number().min(0).optional(),
  /** How long both ran. */
  minutes: z.number().positive().optional(),
  /** Where the wind came from while they ran, degrees clockwise from true north. */
  windFromDeg: z.number().min(0).max(360).optional(),
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
        { value: 'shadow', label: 'tip of a shadow, m beyond its stake' },
      ],
    },
    {
      key: 'value',
      label: 'Reading',
      unit: 'number',
      help: 'Metres for a height, a share from 0 to 1 for light and wind; for a shadow, metres beyond its stake, below zero where it fell short.',
    },
    { key: 'date', label: 'Taken on', unit: 'date', help: 'The day it was taken.' },
    {
      key: 'time',
      label: 'At',
      unit: 'text',
      help: 'Clock time there, such as 09:40; a shadow is scored by it.',
      detail: true,
    },
    {
      key: 'method',
      label: 'How',
      unit: 'text',
      help: 'With what and in what weather: a stick, a meter, an overcast noon.',
    },
    yearField(
      'measuredYear',
      'Counts for the season of',
      'For a height: the year at the end of whose growing season it counts; empty: as the day says.',
      true,
    ),
    {
      key: 'of',
      label: 'Whose',
      unit: 'text',
      help: 'The id of what was measured, as the file has it.',
      detail: true,
    },
    {
      key: 'alongM',
      label: 'How far along it',
      unit: 'm',
      help: 'Where on a belt, wall or outline, from its first point; empty: the corner that reaches furthest.',
      min: 0,
      detail: true,
    },
    {
      key: 'asideM',
      label: 'To the right of its stake',
      unit: 'm',
      help: 'For the tip of a shadow, seen away from the sun; below zero to the left.',
      detail: true,
    },
    {
      key: 'openMps',
      label: 'Meter in the open',
      unit: 'number',
      help: 'Of two hand meters, the mean of the one in the open, metres a second.',
      min: 0,
      aboveMin: true,
      detail: true,
    },
    {
      key: 'spotMps',
      label: 'Meter at the spot',
      unit: 'number',
      help: 'The mean of the other, here, over the same minutes, metres a second.',
      min: 0,
      detail: true,
    },
    {
      key: 'minutes',
      label: 'Minutes',
      unit: 'number',
      help: 'How long both meters ran.',
      min: 0,
      aboveMin: true,
      detail: true,
    },
    {
      key: 'windFromDeg',
      label: 'Wind from',
      unit: 'number',
      help: 'Where the wind came from while they ran, degrees clockwise from true north.',
      min: 0,
      max: 360,
      detail: true,
    },
    noteField,
  ],
} satisfies KindRecord & { schema: z.ZodType; defaults: object };
