import type { Pace } from '../growth/height-curve.ts';
import { bandOf, PACES } from '../growth/pace-band.ts';
import type { GrowthMoment } from '../scene/options.ts';
import type { SiteDocument } from '../site/document.ts';
import { bearingTrees, bearsAt } from './bearing.ts';
import { YEARS } from './growing-plants.ts';
import type { CropLook, SpeciesCrop } from './years-look-types.ts';

/**
 * How many of a layout's trees bear in each year, and from when on each species does; null where no tree bears a crop.
 * @param momentAt how things grow in a year at a pace.
 */
export function cropLook(
  document: SiteDocument,
  layout: string | null,
  momentAt: (year: number, pace: Pace) => GrowthMoment,
): CropLook | null {
  const trees = bearingTrees(document, layout);
  if (trees.length === 0) return null;
  const bears = bandOf((pace) =>
    trees.map((tree) => YEARS.map((year) => bearsAt(document, tree, momentAt(year, pace)))),
  );
  const names = [...new Set(trees.map(({ speciesName }) => speciesName))];
  const species = names.map((speciesName): SpeciesCrop => {
    const own = trees.flatMap((tree, i) => (tree.speciesName === speciesName ? [i] : []));
    return {
      speciesName,
      trees: own.length,
      firstYear: bandOf((pace) => YEARS.find((_, k) => own.some((i) => bears[pace][i][k])) ?? null),
    };
  });
  return {
    trees: trees.length,
    bearing: bandOf((pace) => YEARS.map((_, k) => bears[pace].filter((ofTree) => ofTree[k]).length)),
    species: species.sort((a, b) => soonness(a) - soonness(b)),
  };
}

/** By usual growth, then by the rest of the band. */
const soonness = ({ firstYear }: SpeciesCrop): number =>
  PACES.reduce((sum, pace) => sum + (firstYear[pace] ?? 2 * YEARS.length) * (pace === 'usual' ? 1000 : 1), 0);
