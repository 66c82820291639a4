import type { Pace } from '../growth/height-curve.ts';
import { bandOf, type PaceBand } from '../growth/pace-band.ts';
import type { GrowthMoment } from '../scene/options.ts';
import type { SiteDocument } from '../site/document.ts';
import { bearingTrees, bearsFrom } from '../years/bearing.ts';
import type { LayoutName } from './holdings.ts';

/** Years after the base year in which the layout's own trees bear; null: not within the years looked at. */
export interface CropYears {
  /** Planted trees of species that bear a crop. */
  readonly trees: number;
  /** The first of them… */
  readonly first: PaceBand<number | null>;
  /** …and when at least half of them do. */
  readonly half: PaceBand<number | null>;
}

const LAST_YEAR = 60;
const YEARS = Array.from({ length: LAST_YEAR + 1 }, (_, year) => year);

/**
 * When the trees of a layout bear.
 * @param momentAt how things grow in a year at a pace. @returns null where no planned tree bears a crop
 */
export function cropYears(
  document: SiteDocument,
  layout: LayoutName,
  momentAt: (year: number, pace: Pace) => GrowthMoment,
): CropYears | null {
  const bearing = bearingTrees(document, layout).filter(
    ({ tree: { properties } }) => properties.layout === layout && properties.status === 'planned',
  );
  if (bearing.length === 0) return null;
  const found = bandOf((pace) => {
    const years = bearing
      .map(
        (tree) =>
          bearsFrom(document, tree, YEARS, (year) => momentAt(year, pace)) ?? Number.POSITIVE_INFINITY,
      )
      .sort((one, other) => one - other);
    const nth = (count: number) => (Number.isFinite(years[count - 1]) ? years[count - 1] : null);
    return { first: nth(1), half: nth(Math.ceil(years.length / 2)) };
  });
  return {
    trees: bearing.length,
    first: bandOf((pace) => found[pace].first),
    half: bandOf((pace) => found[pace].half),
  };
}
