import { bandOf, PACES, type PaceBand } from '../growth/pace-band.ts';
import type { LayoutComparison, LayoutSide } from './comparison.ts';
import { COST_PARTS, type CostPart } from './costs.ts';
import type { PlantingYears } from './holdings.ts';

/** `year`: years after the base year; `calendar`: a calendar year; `money`: in the person's own currency. */
export type MeasureUnit = 'count' | 'm' | 'share' | 'year' | 'calendar' | 'money';
export type MeasureGroup = 'planting' | 'shelter' | 'light' | 'crops' | 'cost';
/** One figure, or one for slow, usual and fast growth; null: there is none. */
export type MeasureValue = number | null | PaceBand<number | null>;

/** One line of the table: a figure of either layout. */
export interface Measure {
  readonly group: MeasureGroup;
  readonly what: string;
  readonly unit: MeasureUnit;
  readonly values: readonly [MeasureValue, MeasureValue];
}

export const isBand = (value: MeasureValue): value is PaceBand<number | null> =>
  typeof value === 'object' && value !== null;

/** What is told apart: whole percents, decimetres, anything else to a hundredth. */
const TOLD_APART: Partial<Record<MeasureUnit, number>> = { share: 0.01, m: 0.1 };

/** Whether the figures are not the same as they are told. */
export function differs({ values: [a, b], unit }: Measure): boolean {
  const told = (value: number) => Math.round(value / (TOLD_APART[unit] ?? 0.01));
  const apart = (one: number | null, other: number | null) =>
    one === null || other === null ? one !== other : told(one) !== told(other);
  if (isBand(a) && isBand(b)) return PACES.some((pace) => apart(a[pace], b[pace]));
  return isBand(a) || isBand(b) || apart(a, b);
}

/** How much more b is than a; null where one of them is not known. */
export function differenceOf({ values: [a, b] }: Measure): MeasureValue {
  const less = (one: number | null, other: number | null) =>
    one === null || other === null ? null : other - one;
  if (isBand(a) && isBand(b)) return bandOf((pace) => less(a[pace], b[pace]));
  return isBand(a) || isBand(b) ? null : less(a, b);
}

const COST_NAMES: Readonly<Record<CostPart, string>> = {
  trees: 'Cost of trees',
  belts: 'Cost of belts',
  walls: 'Cost of walls and nets',
};

/** Every figure of two layouts, those of which neither has any left out. */
export function measuresOf({ sides, year, wantedShare, fieldName }: LayoutComparison): Measure[] {
  const measure =
    (group: MeasureGroup) =>
    (what: string, unit: MeasureUnit, of: (side: LayoutSide) => MeasureValue): Measure => ({
      group,
      what,
      unit,
      values: [of(sides[0]), of(sides[1])],
    });
  const planting = measure('planting');
  const shelter = measure('shelter');
  const light = measure('light');
  const crops = measure('crops');
  const cost = measure('cost');
  const names = new Map(
    sides.flatMap(({ holdings }) => holdings.trees.map(({ species, commonName }) => [species, commonName])),
  );
  const planted = (what: string, of: (side: LayoutSide) => PlantingYears): Measure[] => [
    planting(`${what} planted, first`, 'calendar', (side) => of(side)?.[0] ?? null),
    planting(`${what} planted, last`, 'calendar', (side) => of(side)?.[1] ?? null),
  ];
  const all = [
    planting('Trees', 'count', ({ holdings }) => holdings.treeCount),
    ...[...names]
      .sort(([, a], [, b]) => (a < b ? -1 : 1))
      .map(([species, name]) =>
        planting(
          `Trees: ${name}`,
          'count',
          ({ holdings }) => holdings.trees.find((each) => each.species === species)?.trees ?? 0,
        ),
      ),
    planting('Belts', 'm', ({ holdings }) => holdings.beltM),
    planting('Walls, fences and nets', 'm', ({ holdings }) => holdings.wallM),
    planting('Blocks', 'count', ({ holdings }) => holdings.blocks),
    planting('Patches drawn', 'count', ({ holdings }) => holdings.patches),
    planting('Plantings', 'count', ({ holdings }) => holdings.plantings),
    ...planted('Belts', ({ holdings }) => holdings.beltsPlanted),
    ...planted('Trees', ({ holdings }) => holdings.treesPlanted),
    shelter(
      `${percentOf(wantedShare)} of ${fieldName} in shelter from`,
      'year',
      ({ years }) => years.shelteredFrom,
    ),
    shelter(
      'Wind cut, mean, when half of the trees are planted',
      'share',
      ({ years }) => years.cutAtPlanting,
    ),
    shelter(`Wind cut, mean, year ${year}`, 'share', ({ figures }) => figures.meanCut),
    shelter(
      `Share of ${fieldName} with the wind cut by 30 % or more, year ${year}`,
      'share',
      ({ figures }) => figures.shelteredShare,
    ),
    light(`Patches, year ${year}`, 'count', ({ figures }) => figures.patches),
    light(
      `Patches with enough light, year ${year}`,
      'count',
      ({ figures }) => figures.patchesWithEnoughLight,
    ),
    light(
      `Share of open light on the patches, mean, year ${year}`,
      'share',
      ({ figures: { meanLightShare } }) => (Number.isNaN(meanLightShare) ? null : meanLightShare),
    ),
    crops('Trees that bear a crop', 'count', ({ years }) => years.crops?.trees ?? 0),
    crops('First crop', 'year', ({ years }) => years.crops?.first ?? null),
    crops('Half of the trees that bear do so', 'year', ({ years }) => years.crops?.half ?? null),
    ...COST_PARTS.map((part) => cost(COST_NAMES[part], 'money', ({ costs }) => costs.parts[part])),
    cost('Cost in all', 'money', ({ costs }) => costs.total),
  ];
  return all.filter(({ values }) => values.some(isThere));
}

const isThere = (value: MeasureValue): boolean => value !== null && value !== 0;

const percentOf = (share: number): string => `${Math.round(share * 100)} %`;
