/**
 * The woods around a site from a surface raster: their height is the surface less the terrain. They stand beside what is
 * drawn and never on it, so that nothing counts twice.
 */
import { depthPerMetreFromDensity } from '../crowns/transmission.ts';
import type { Frame } from '../geo/frame.ts';
import { DEFAULT_DECIDUOUS, LEAF_CALENDARS } from '../growth/leaf-calendar.ts';
import type { Surroundings } from '../light/surroundings.ts';
import { cellCentreX, cellCentreY, type Grid, sampleGrid } from '../numeric/grid.ts';
import { beltHabitOf, DEFAULT_LEAF_OFF_RATIO } from '../plants/crown-density.ts';
import { findSpecies } from '../plants/find-species.ts';
import { foliageFactors } from '../plants/foliage-range.ts';
import { chosenFeatures, featuresOfKind, isOfKind, takenField } from '../site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';
import { blockDefaults } from '../site/records/block.ts';
import type { SurfaceLeaves } from '../site/records/site.ts';
import { cellsNear } from './cells-near.ts';
import type { LeafClasses } from './leaf-phases.ts';
import type { SceneOptions } from './options.ts';
import { treeAtYear } from './stand-at-year.ts';

/**
 * Tops less than this above the terrain are no wood, m: grass, crops and bracken, and what two rasters differ by that
 * are each right to a few decimetres, more on steep ground. What stands lower than a metre shades little beyond its own
 * cell. Common practice, no source.
 */
const LEAST_TOP_M = 1;
/**
 * Tops this near to what is drawn belong to it, m: a raster's cells lie across edges, and crowns hang over the line at
 * which a belt or a field was drawn. Common practice, no source.
 */
const NEAR_M = 3;
/**
 * Leaf area in a cubic metre from the ground to the tops: that of a wood that is drawn, so that a wood takes the same
 * light either way. Common practice, no source.
 */
const LEAF_AREA_DENSITY_M2M3 = blockDefaults.leafAreaDensityM2M3;

const heightsOf = new WeakMap<Grid, { readonly ground: Grid; readonly canopy: Grid }>();

/** Metres of foliage above the ground on the surface's own cells, before anything drawn is taken out; 0 where none, or not known. */
export function canopyOf(surface: Grid, ground: Grid): Grid {
  const known = heightsOf.get(surface);
  if (known?.ground === ground) return known.canopy;
  const values = new Float32Array(surface.values.length);
  for (let r = 0, cell = 0; r < surface.rows; r++)
    for (let c = 0; c < surface.columns; c++, cell++) {
      const heightM =
        surface.values[cell] - sampleGrid(ground, cellCentreX(surface, c), cellCentreY(surface, r));
      // No data is no wood: the comparison with NaN is false.
      if (heightM > LEAST_TOP_M) values[cell] = heightM;
    }
  const canopy = { ...surface, values };
  heightsOf.set(surface, { ground, canopy });
  return canopy;
}

/** The raster's woods where nothing is drawn: metres of foliage, 0 elsewhere. Null without a surface. */
export function woodsBeside(document: SiteDocument, options: SceneOptions): Grid | null {
  const { surface, ground, frame } = options;
  if (!surface) return null;
  const outsideFields = without(canopyOf(surface, ground), frame, fieldReach(document));
  return without(outsideFields, frame, drawnReach(document, options));
}

/** The woods around, null where none are known, and what had to be assumed of them. */
export function siteSurroundings(
  document: SiteDocument,
  options: SceneOptions,
  leafClasses: LeafClasses,
): { readonly surroundings: Surroundings | null; readonly assumed: readonly string[] } {
  const file = document.site.surfaceFile ?? 'the surface raster';
  const canopy = woodsBeside(document, options);
  if (!canopy) return { surroundings: null, assumed: [] };
  if (!canopy.values.some((heightM) => heightM > 0))
    return { surroundings: null, assumed: [`${file} shows no woods beside what is drawn.`] };
  const leaves = document.site.surfaceLeaves ?? 'deciduous';
  const evergreen = leaves === 'evergreen';
  const factors = foliageFactors(options.foliage ?? 'usual', false, evergreen);
  const depthPerM = depthPerMetreFromDensity(LEAF_AREA_DENSITY_M2M3);
  const assumed = [
    `The woods of ${file} are foliage of ${LEAF_AREA_DENSITY_M2M3} m² of leaf in a m³ from the ground to their tops; they shade and do not shelter, and keep their height in every year.`,
  ];
  if (!document.site.surfaceLeaves)
    assumed.push(`The woods of ${file} lose their leaves in winter: site.surfaceLeaves does not say.`);
  return {
    surroundings: {
      canopy,
      depthOnPerM: depthPerM * factors.leafOn,
      depthOffPerM: depthPerM * LEAFLESS_RATIO[leaves] * factors.leafOff,
      leafClass: leafClasses.indexOf(evergreen ? LEAF_CALENDARS.evergreen : DEFAULT_DECIDUOUS),
    },
    assumed,
  };
}

/** Depth leafless against in leaf; a mixed wood is half of each. */
const LEAFLESS_RATIO: Readonly<Record<SurfaceLeaves, number>> = {
  deciduous: DEFAULT_LEAF_OFF_RATIO,
  mixed: (1 + DEFAULT_LEAF_OFF_RATIO) / 2,
  evergreen: 1,
};

const cellsOf = new WeakMap<SiteFeature, { canopy: Grid; reachM: number; cells: Uint32Array }>();
const beside = new WeakMap<Grid, { taken: readonly Uint32Array[]; canopy: Grid }>();

/**
 * The canopy without the cells on features and as near to them as is said. The very same grid again while the same
 * cells are taken out, so that a tree dragged in the open leaves the woods alone.
 */
function without(canopy: Grid, frame: Frame, features: Iterable<readonly [SiteFeature, number]>): Grid {
  const taken: Uint32Array[] = [];
  for (const [feature, reachM] of features) {
    let known = cellsOf.get(feature);
    if (known?.canopy !== canopy || known.reachM !== reachM) {
      known = { canopy, reachM, cells: cellsNear(canopy, frame, feature, reachM) };
      cellsOf.set(feature, known);
    }
    if (known.cells.length > 0) taken.push(known.cells);
  }
  const last = beside.get(canopy);
  if (last?.taken.length === taken.length && taken.every((cells, k) => cells === last.taken[k]))
    return last.canopy;
  const values = canopy.values.slice();
  for (const cells of taken) for (const cell of cells) values[cell] = 0;
  const result = { ...canopy, values };
  beside.set(canopy, { taken, canopy: result });
  return result;
}

/** Inside a field the plan is what a person draws: the one that is taken, or all while none is. */
function* fieldReach(document: SiteDocument): Generator<readonly [SiteFeature, number]> {
  const taken = takenField(document);
  for (const field of taken ? [taken] : featuresOfKind(document.features, 'field')) yield [field, NEAR_M];
}

/**
 * Everything drawn that shades, with how far beyond its outline the raster's woods make way. A thing that is felled, or
 * not planted yet, takes their place too: the raster shows what stood when it was flown.
 */
function* drawnReach(
  document: SiteDocument,
  options: SceneOptions,
): Generator<readonly [SiteFeature, number]> {
  for (const feature of chosenFeatures(document, options.layout)) {
    if (isOfKind(feature, 'tree')) {
      const radiiM = [0, options.year].map(
        (year) => treeAtYear(document, feature, { ...options, year })?.radiusM ?? 0,
      );
      yield [feature, Math.max(...radiiM) + NEAR_M];
    } else if (isOfKind(feature, 'belt')) {
      const species = findSpecies(feature.properties.species, document.site.species);
      yield [feature, (feature.properties.widthM ?? beltHabitOf(species).widthM) / 2 + NEAR_M];
    } else if (isOfKind(feature, 'block') || isOfKind(feature, 'wall') || isOfKind(feature, 'building'))
      yield [feature, NEAR_M];
  }
}
