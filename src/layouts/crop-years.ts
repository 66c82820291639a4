import type { Pace } from '../growth/height-curve.ts';
import { findSpecies } from '../plants/find-species.ts';
import type { GrowthMoment } from '../scene/options.ts';
import { treeAtYear } from '../scene/stand-at-year.ts';
import type { FeatureOf, SiteDocument } from '../site/document.ts';
import { type LayoutName, ownFeatures } from './holdings.ts';
import { bandOf, type PaceBand } from './pace-band.ts';

/** Years after the base year in which the layout's own trees bear; null: not within the years looked at. */
export interface CropYears {
  /** Planned trees of species that bear a crop. */
  readonly trees: number;
  /** The first of them… */
  readonly first: PaceBand<number | null>;
  /** …and when at least half of them do. */
  readonly half: PaceBand<number | null>;
}

/** A tree that has not come to bear so long after its usual year is not waited for. */
const LONGEST_WAIT_YEARS = 40;

/**
 * When the trees of a layout bear. A species bears in the year the catalogue gives, counted from planting, at usual
 * growth (common practice, no source). At another growth the tree bears when it has reached the size that it would have
 * had then (our guess): a slow one later, a sheltered one sooner where the moments say that shelter speeds it.
 * @param momentAt how things grow in a year at a pace. @returns null where no planned tree bears a crop
 */
export function cropYears(
  document: SiteDocument,
  layout: LayoutName,
  momentAt: (year: number, pace: Pace) => GrowthMoment,
): CropYears | null {
  const bearing = ownFeatures(document, layout).flatMap((feature) => {
    const tree = feature as FeatureOf<'tree'>;
    const { kind, status, species } = tree.properties;
    if (kind !== 'tree' || status !== 'planned') return [];
    const yearsToBear = findSpecies(species, document.site.species)?.yearsToBear ?? null;
    return yearsToBear === null ? [] : [{ tree, yearsToBear }];
  });
  if (bearing.length === 0) return null;
  const at = (pace: Pace) => {
    const years = bearing
      .map(({ tree, yearsToBear }) => bearsFrom(document, tree, yearsToBear, (year) => momentAt(year, pace)))
      .sort((one, other) => one - other);
    const nth = (count: number) => (Number.isFinite(years[count - 1]) ? years[count - 1] : null);
    return { first: nth(1), half: nth(Math.ceil(years.length / 2)) };
  };
  const found = bandOf(at);
  return {
    trees: bearing.length,
    first: bandOf((pace) => found[pace].first),
    half: bandOf((pace) => found[pace].half),
  };
}

/** Year after the base year; Infinity: never, or it is gone before. */
function bearsFrom(
  document: SiteDocument,
  tree: FeatureOf<'tree'>,
  yearsToBear: number,
  momentIn: (year: number) => GrowthMoment,
): number {
  const { baseYear } = document.site;
  const planted = (tree.properties.plantedYear ?? baseYear) - baseYear;
  const usualYear = planted + yearsToBear;
  const usual: GrowthMoment = { year: usualYear, layout: tree.properties.layout ?? null, pace: 'usual' };
  // A tree that is gone by then is asked for as if it stayed: it may bear before, where it grows fast.
  const { removedYear: _, ...staying } = tree.properties;
  const bearingM = treeAtYear(document, { ...tree, properties: staying }, usual)?.heightM ?? 0;
  for (let year = Math.max(0, planted); year <= usualYear + LONGEST_WAIT_YEARS; year++) {
    const stand = treeAtYear(document, tree, momentIn(year));
    if (stand && stand.heightM >= bearingM - 1e-9) return year;
  }
  return Number.POSITIVE_INFINITY;
}
