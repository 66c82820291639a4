import { comparedField } from '../layouts/compared-field.ts';
import type { LayoutComparison } from '../layouts/comparison.ts';
import { comparisonOf } from '../layouts/comparison-of.ts';
import { cellCount } from '../numeric/grid.ts';
import { growPlan } from '../scene/grow-plan.ts';
import type { GrownPlan } from '../scene/grown-plan.ts';
import { featuresOfKind } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import { layoutAfter, layoutNames } from '../site/layout-names.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { WIND_CUT_BANDS } from '../units/bands.ts';
import {
  answersOf,
  type Comparing,
  type LayoutPair,
  type LayoutPairFound,
  type LightMaps,
  type WindMaps,
} from './layout-pair-found.ts';
import { lightBandsOf } from './light-bands.ts';
import type { AppState } from './model.ts';
import type { PictureRaster } from './picture-raster.ts';
import { READING_HEIGHT_M, WIND_READING_HEIGHT_M } from './reading-height.ts';

type Choice = Pick<AppState, 'document' | 'comparing'>;

const firstPairs = new WeakMap<SiteDocument, LayoutPair>();

/**
 * The two that are looked at: those chosen, else the first two; beside a single one what is common. Null: there is
 * none. The same pair as long as nothing of it changed.
 */
export function pairOf({ document, comparing }: Choice): LayoutPair | null {
  if (comparing.layouts) return comparing.layouts;
  const [first, second = null] = layoutNames(document);
  if (first === undefined) return null;
  const pair = firstPairs.get(document) ?? [first, second];
  firstPairs.set(document, pair);
  return pair;
}

/** The field they are compared on; null where none is drawn. */
export function pairField(state: Choice): FieldFeature | null {
  const { document, comparing } = state;
  const chosen = featuresOfKind(document.features, 'field').find(({ id }) => id === comparing.fieldId);
  return chosen ?? comparedField(document, pairOf(state) ?? []);
}

/** The comparison as it is after an edit: layouts under their new names; those chosen anew where one is gone. */
export function comparingAfter(before: SiteDocument, after: SiteDocument, comparing: Comparing): Comparing {
  const { layouts } = comparing;
  if (!layouts) return comparing;
  const now = layouts.map((layout) => layoutAfter(before, after, layout));
  const gone = layouts.some((layout, i) => layout !== null && now[i] === null);
  if (gone) return { ...comparing, layouts: null };
  return now.every((layout, i) => layout === layouts[i])
    ? comparing
    : { ...comparing, layouts: [now[0], now[1]] };
}

const comparisons = new WeakMap<LayoutPairFound, { document: SiteDocument; comparison: LayoutComparison }>();

/** What was found of two layouts, beside what the site says of them now; null until the engines have answered. */
export function pairComparison({
  document,
  layoutPair: { result },
}: Pick<AppState, 'document' | 'layoutPair'>): LayoutComparison | null {
  const answers = result && answersOf(result);
  const field = document.features.find(({ id }) => id === result?.fieldId);
  if (!answers || field?.properties.kind !== 'field' || !result.figures) return null;
  const known = comparisons.get(result);
  if (known?.document === document) return known.comparison;
  const { layouts, wantedShare, figures } = result;
  const comparison = comparisonOf(
    document,
    field as FieldFeature,
    { layouts, wantedShare, year: figures.year },
    answers,
  );
  comparisons.set(result, { document, comparison });
  return comparison;
}

type PlanState = Pick<AppState, 'document' | 'year' | 'frame' | 'comparing'>;
let planned: { of: readonly unknown[]; plans: readonly [GrownPlan, GrownPlan] } | null = null;

/** The plans of both in the chosen year. The same objects as long as nothing of them changed. */
export function pairPlans(state: PlanState): readonly [GrownPlan, GrownPlan] | null {
  const pair = pairOf(state);
  if (!pair) return null;
  const { document, year, frame } = state;
  const of = [document.features, document.site, year, frame, ...pair];
  if (!planned || of.some((part, i) => !Object.is(part, planned?.of[i]))) {
    const grow = (layout: LayoutPair[0]) => growPlan(document, { year, layout, pace: 'usual', frame });
    planned = { of, plans: [grow(pair[0]), grow(pair[1])] };
  }
  return planned.plans;
}

type RasterState = Pick<AppState, 'document' | 'layoutPair'>;
const rasters = new WeakMap<object, PictureRaster>();

/** What the map of one side is inked with; null until it is worked out. The same object for the same result. */
export function pairRaster({ document, layoutPair }: RasterState, side: 0 | 1): PictureRaster | null {
  const maps = layoutPair.result?.maps;
  if (!maps) return null;
  const result = maps.results[side];
  const made =
    rasters.get(result) ?? (maps.picture === 'wind-cut' ? ofWind(maps, side) : ofLight(maps, side, document));
  rasters.set(result, made);
  return made;
}

function ofWind({ results, year }: WindMaps, side: 0 | 1): PictureRaster {
  const { grid, windShare } = results[side];
  return {
    ...common(year, WIND_READING_HEIGHT_M),
    grid,
    values: windShare.subarray(0, cellCount(grid)).map((share) => 1 - share),
    bands: WIND_CUT_BANDS,
  };
}

function ofLight({ results, year }: LightMaps, side: 0 | 1, { site }: SiteDocument): PictureRaster {
  const { grid, lightShare } = results[side];
  const cells = cellCount(grid);
  return {
    ...common(year, READING_HEIGHT_M.ground),
    grid,
    // The growing season is the thirteenth band.
    values: lightShare.subarray(12 * cells, 13 * cells),
    bands: lightBandsOf(site),
  };
}

function common(year: number, heightM: number) {
  const seasonAndHeight = `growing season, ${heightM} m above the ground`;
  return {
    lines: [],
    supposed: null,
    detail: `growing season, year ${year}, ${heightM} m above the ground`,
    seasonAndHeight,
    stale: false,
    live: false,
  };
}
