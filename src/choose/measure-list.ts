import type { FieldFigures, GroundFigures, StateFigures } from './choose-types.ts';
import type { Measure } from './measure-types.ts';

type Given = Pick<Measure, 'key' | 'what' | 'unit' | 'better' | 'alikeWithin'>;
const known = (value: number | null | undefined): number | null =>
  value === null || value === undefined || Number.isNaN(value) ? null : value;

const ofGround = (
  group: Measure['group'],
  given: Given,
  of: (ground: GroundFigures) => number | null,
): Measure => ({ ...given, group, byState: false, of: ({ ground }) => known(of(ground)) });
const ofField = (
  group: Measure['group'],
  given: Given,
  of: (field: FieldFigures) => number | null,
): Measure => ({ ...given, group, byState: false, of: (field) => known(of(field)) });
const ofState = (
  group: Measure['group'],
  given: Given,
  of: (figures: StateFigures, ground: GroundFigures) => number,
): Measure => ({
  ...given,
  group,
  byState: true,
  of: ({ states, ground }, state) => {
    const figures = states.get(state);
    return figures ? known(of(figures, ground)) : null;
  },
});

/** Most of the ground that has both and hangs on one owner's edges, as a share of the field. */
function borrowed({ states, withoutOwners }: FieldFigures): number {
  const has = states.get('stands')?.bothShare ?? Number.NaN;
  return withoutOwners.reduce((most, { figures }) => Math.max(most, has - figures.bothShare), 0);
}

/** The one list of what fields are compared by, in the order in which it is read: text, sheet, CSV and JSON follow it. */
export const MEASURES: readonly Measure[] = [
  ofGround(
    'Ground',
    { key: 'areaM2', what: 'Area', unit: 'm2', better: 'more', alikeWithin: 500 },
    (g) => g.areaM2,
  ),
  ofGround(
    'Ground',
    { key: 'slopeDeg', what: 'Slope', unit: 'deg', better: 'less', alikeWithin: 1 },
    (g) => g.slopeDeg,
  ),
  ofGround(
    'Ground',
    { key: 'aspectDeg', what: 'Falls towards', unit: 'bearing', better: null, alikeWithin: 22.5 },
    (g) => g.aspectDeg,
  ),
  ofGround(
    'Ground',
    {
      key: 'horizonSumDeg',
      what: 'Land around it, sum of eight horizons',
      unit: 'deg',
      better: null,
      alikeWithin: 5,
    },
    (g) => g.horizonSumDeg,
  ),
  ofGround(
    'Ground',
    {
      key: 'wetness',
      what: 'Wetness by how water runs (index)',
      unit: 'index',
      better: 'less',
      alikeWithin: 0.5,
    },
    (g) => g.wetness,
  ),
  ofGround(
    'Ground',
    {
      key: 'toAccessM',
      what: 'To the nearest path or track drawn',
      unit: 'm',
      better: 'less',
      alikeWithin: 20,
    },
    (g) => g.toAccessM,
  ),
  ofGround(
    'Ground',
    { key: 'toWaterM', what: 'To the nearest water drawn', unit: 'm', better: 'less', alikeWithin: 20 },
    (g) => g.toWaterM,
  ),
  ofState(
    'Wind',
    {
      key: 'windCutGrowing',
      what: 'Wind cut by, growing season',
      unit: 'share',
      better: 'more',
      alikeWithin: 0.03,
    },
    (s) => s.windCutGrowing,
  ),
  ofState(
    'Wind',
    {
      key: 'windCutRest',
      what: 'Wind cut by, rest of the year',
      unit: 'share',
      better: 'more',
      alikeWithin: 0.03,
    },
    (s) => s.windCutRest,
  ),
  ofState(
    'Wind',
    { key: 'galeHours', what: 'Hours with a gale, year', unit: 'hours', better: 'less', alikeWithin: 10 },
    (s) => s.galeHours,
  ),
  ofState(
    'Light',
    {
      key: 'lightGrowing',
      what: 'Share of open light, growing season',
      unit: 'share',
      better: 'more',
      alikeWithin: 0.03,
    },
    (s) => s.lightGrowing,
  ),
  ofState(
    'Light',
    {
      key: 'lightMidwinter',
      what: 'Share of open light, midwinter month',
      unit: 'share',
      better: 'more',
      alikeWithin: 0.03,
    },
    (s) => s.lightMidwinter,
  ),
  ofState(
    'Light',
    {
      key: 'sunHoursGrowing',
      what: 'Direct sun, growing season',
      unit: 'hours',
      better: 'more',
      alikeWithin: 50,
    },
    (s) => s.sunHoursGrowing,
  ),
  ofState(
    'Light',
    {
      key: 'sunHoursMidwinter',
      what: 'Direct sun, midwinter month',
      unit: 'hours',
      better: 'more',
      alikeWithin: 10,
    },
    (s) => s.sunHoursMidwinter,
  ),
  ofState(
    'Light and shelter',
    { key: 'litM2', what: 'Ground with enough light', unit: 'm2', better: 'more', alikeWithin: 500 },
    (s, g) => s.lightEnoughShare * g.areaM2,
  ),
  ofState(
    'Light and shelter',
    { key: 'shelteredM2', what: 'Ground with enough shelter', unit: 'm2', better: 'more', alikeWithin: 500 },
    (s, g) => s.shelterEnoughShare * g.areaM2,
  ),
  ofState(
    'Light and shelter',
    { key: 'bothM2', what: 'Ground with both', unit: 'm2', better: 'more', alikeWithin: 500 },
    (s, g) => s.bothShare * g.areaM2,
  ),
  ofState(
    'Light and shelter',
    {
      key: 'bothShare',
      what: 'Ground with both, of the field',
      unit: 'share',
      better: null,
      alikeWithin: 0.05,
    },
    (s) => s.bothShare,
  ),
  ofField(
    'Light and shelter',
    {
      key: 'borrowedShare',
      what: 'Has both only by somebody else’s edge',
      unit: 'share',
      better: 'less',
      alikeWithin: 0.05,
    },
    borrowed,
  ),
  ofGround(
    'Cold air',
    { key: 'hollowShare', what: 'Lies in a frost hollow', unit: 'share', better: 'less', alikeWithin: 0.05 },
    (g) => g.cold.hollowShare,
  ),
  ofGround(
    'Cold air',
    {
      key: 'dammedShare',
      what: 'The same with what stands there holding air back',
      unit: 'share',
      better: 'less',
      alikeWithin: 0.05,
    },
    (g) => g.cold.dammedShare,
  ),
  ofGround(
    'Cold air',
    { key: 'deepestColdM', what: 'Hollow, at its deepest', unit: 'm', better: null, alikeWithin: 0.3 },
    (g) => g.cold.deepestM,
  ),
  ofGround(
    'Cold air',
    {
      key: 'drainsThroughM2',
      what: 'Ground whose cold air comes through',
      unit: 'm2',
      better: null,
      alikeWithin: 5000,
    },
    (g) => g.cold.drainsThroughM2,
  ),
  ofField(
    'Belts',
    {
      key: 'shelteredFromYear',
      what: 'Half of it in shelter, with what is planned',
      unit: 'year',
      better: 'less',
      alikeWithin: 2,
    },
    ({ shelteredFrom }) => shelteredFrom.usual ?? Number.POSITIVE_INFINITY,
  ),
  ofField(
    'Belts',
    {
      key: 'beltNeededM',
      what: 'New belt to shelter the rest of it',
      unit: 'm',
      better: 'less',
      alikeWithin: 20,
    },
    ({ beltNeededM }) => beltNeededM,
  ),
];
