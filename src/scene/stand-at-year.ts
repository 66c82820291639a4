import type { CrownForm } from '../crowns/crown-set.ts';
import { depthPerMetreFromDensity, depthPerMetreFromPorosity } from '../crowns/transmission.ts';
import { DEFAULT_DECIDUOUS, LEAF_CALENDARS, type LeafCalendar } from '../growth/leaf-calendar.ts';
import { woodySizeAt } from '../growth/size-at-year.ts';
import type { WoodyPlant } from '../growth/woody-plant.ts';
import { beltHabitOf, crownDensity, DEFAULT_LEAF_OFF_RATIO } from '../plants/crown-density.ts';
import { findRootstock } from '../plants/find-species.ts';
import { foliageFactors } from '../plants/foliage-range.ts';
import type { Species } from '../plants/species.ts';
import type { FeatureOf, SiteDocument } from '../site/document.ts';
import { beltDefaults } from '../site/records/belt.ts';
import { blockDefaults } from '../site/records/block.ts';
import { buildingDefaults } from '../site/records/building.ts';
import { treeDefaults } from '../site/records/tree.ts';
import { wallDefaults } from '../site/records/wall.ts';
import type { Woody } from '../site/woody.ts';
import type { GrowthMoment } from './options.ts';
import { kindAtYear } from './species-at-year.ts';

/** Width of a wall, fence or net as a body (m): thin enough not to shade by itself, thick enough for slanting rays. */
const WALL_WIDTH_M = 0.2;

/** A tree as it stands in one year. Depths are optical depths per metre of path. */
export interface TreeStand {
  readonly heightM: number;
  readonly baseM: number;
  readonly radiusM: number;
  readonly form: CrownForm;
  readonly depthPerMOn: number;
  readonly depthPerMOff: number;
  readonly calendar: LeafCalendar;
}

/** A belt, block or wall as it stands in one year. */
export interface WindbreakStand {
  readonly heightM: number;
  readonly baseM: number;
  /** Across a line; 0 for an area. */
  readonly widthM: number;
  readonly porosityOn: number;
  readonly porosityOff: number;
  readonly depthPerMOn: number;
  readonly depthPerMOff: number;
  readonly solid: boolean;
  readonly calendar: LeafCalendar;
}

const STANDING_HEIGHT_M = {
  tree: treeDefaults.heightM,
  belt: beltDefaults.heightM,
  block: blockDefaults.heightM,
} as const;

const calendarYearOf = (document: SiteDocument, moment: GrowthMoment): number =>
  document.site.baseYear + moment.year;

/** What `growth/` needs to know of a feature. @param species the one that stands there in the year asked for. */
function plantOf(
  document: SiteDocument,
  feature: Woody,
  species: Species | null,
  moment: GrowthMoment,
): WoodyPlant {
  const { status, heightM, measuredYear, plantedYear, removedYear, care } = feature.properties;
  const speeds = moment.speeds?.get(feature.id);
  return {
    curve: species?.curve ?? null,
    standingHeightM: STANDING_HEIGHT_M[feature.properties.kind],
    spread: species?.spread ?? null,
    clearStemShare: species?.clearStemShare,
    status,
    heightM,
    measuredYear,
    plantedYear,
    removedYear,
    vigour: (document.site.vigour ?? 1) * (species?.vigour ?? 1),
    care,
    shootsAgain: species?.shootsAgain,
    ...(speeds ? { speeds: { firstYear: document.site.baseYear, factor: speeds } } : {}),
    ...(feature.properties.kind === 'tree'
      ? {
          crownRadiusM: feature.properties.crownRadiusM,
          crownBaseM: feature.properties.crownBaseM,
          rootstockFactor: findRootstock(species, feature.properties.rootstock)?.sizeFactor,
        }
      : { crownBaseM: feature.properties.baseHeightM }),
  };
}

/** The species' leaf calendar; without a species evergreen, unless something is said of its leafless state. */
function calendarOf(species: Species | null, leaflessGiven: boolean): LeafCalendar {
  if (species) return LEAF_CALENDARS[species.leafClass];
  return leaflessGiven ? DEFAULT_DECIDUOUS : LEAF_CALENDARS.evergreen;
}

/** Null: not planted yet, or gone. */
export function treeAtYear(
  document: SiteDocument,
  tree: FeatureOf<'tree'>,
  moment: GrowthMoment,
): TreeStand | null {
  const calendarYear = calendarYearOf(document, moment);
  const { species, isAnother } = kindAtYear(document, tree, calendarYear);
  const plant = plantOf(document, tree, species, moment);
  const size = woodySizeAt(plant, calendarYear, document.site.baseYear, moment.pace);
  if (!size) return null;
  const calendar = calendarOf(species, false);
  const { crownForm, leafAreaDensityM2M3 } = isAnother ? {} : tree.properties;
  return {
    heightM: size.heightM,
    baseM: size.crownBaseM,
    radiusM: size.crownRadiusM * (moment.crownSpreadFactor ?? 1),
    form: crownForm ?? species?.crownForm ?? treeDefaults.crownForm,
    ...crownDepths(species, leafAreaDensityM2M3, calendar, size.foliageShare, moment),
    calendar,
  };
}

/**
 * Optical depths of a crown: the species' published ones, or those of a density that the file gives, or the default;
 * less what was thinned out.
 */
function crownDepths(
  species: Species | null,
  givenM2M3: number | undefined,
  calendar: LeafCalendar,
  foliageShare: number,
  { foliage = 'usual' }: GrowthMoment,
): { depthPerMOn: number; depthPerMOff: number } {
  if (species && givenM2M3 === undefined) {
    const { leafAreaDensityM2M3, leafOffRatio } = crownDensity(species, foliage);
    const depthPerMOn = depthPerMetreFromDensity(leafAreaDensityM2M3) * foliageShare;
    return { depthPerMOn, depthPerMOff: depthPerMOn * leafOffRatio };
  }
  const depthPerM = depthPerMetreFromDensity(givenM2M3 ?? treeDefaults.leafAreaDensityM2M3) * foliageShare;
  const leafOffRatio = species ? crownDensity(species).leafOffRatio : DEFAULT_LEAF_OFF_RATIO;
  const factors = foliageFactors(foliage, givenM2M3 !== undefined, calendar.evergreen);
  return {
    depthPerMOn: depthPerM * factors.leafOn,
    depthPerMOff: depthPerM * leafOffRatio * factors.leafOff,
  };
}

/** Porosity of the twigs alone, from what was seen in winter when some of the leaves hang on (optical depths add up). */
function barePorosity(winter: number, inLeaf: number, { evergreen, winterShare }: LeafCalendar): number {
  if (evergreen || winterShare === 0 || inLeaf === 0) return winter;
  return Math.min(1, (winter / inLeaf ** winterShare) ** (1 / (1 - winterShare)));
}

/** A belt or block in one year; null: not planted yet, or gone. */
export function beltOrBlockAtYear(
  document: SiteDocument,
  feature: FeatureOf<'belt' | 'block'>,
  moment: GrowthMoment,
): WindbreakStand | null {
  const calendarYear = calendarYearOf(document, moment);
  const { species, isAnother, isDescribed } = kindAtYear(document, feature, calendarYear);
  const { properties } = feature;
  const seen = isAnother
    ? null
    : {
        porosityOn: properties.opticalPorosityLeafOn,
        winter: properties.opticalPorosityLeafOff,
        densityM2M3: properties.kind === 'block' ? properties.leafAreaDensityM2M3 : undefined,
      };
  const plant = plantOf(document, feature, species, moment);
  const size = woodySizeAt(plant, calendarYear, document.site.baseYear, moment.pace);
  if (!size) return null;
  const { heightM, foliageShare } = size;
  const footM = Math.max(size.clearedToM, size.fromStump || !isDescribed ? 0 : (properties.baseHeightM ?? 0));
  const habit = beltHabitOf(species);
  const leafOffRatio = species ? crownDensity(species).leafOffRatio : DEFAULT_LEAF_OFF_RATIO;
  const usualPorosityOn = seen?.porosityOn ?? habit.opticalPorosityLeafOn;
  const winterGiven = seen?.winter;
  const calendar = calendarOf(species, winterGiven !== undefined);
  // A porosity measured in leaf moves the leafless one with it; the species' own pair stays together.
  const usualPorosityOff =
    winterGiven !== undefined
      ? barePorosity(winterGiven, usualPorosityOn, calendar)
      : seen?.porosityOn === undefined
        ? habit.opticalPorosityLeafOff
        : usualPorosityOn ** leafOffRatio;
  const foliageOf = (given: number | undefined) =>
    foliageFactors(moment.foliage ?? 'usual', given !== undefined, calendar.evergreen);
  // Porosity is exp(-depth): a factor on the depth is its power.
  const porosityFactors = foliageOf(seen?.porosityOn);
  const porosityOn = usualPorosityOn ** (porosityFactors.leafOn * foliageShare);
  const porosityOff = usualPorosityOff ** (porosityFactors.leafOff * foliageShare);
  const isBelt = properties.kind === 'belt';
  const widthM = properties.kind === 'belt' ? (properties.widthM ?? habit.widthM) : 0;
  const blockGiven = seen?.densityM2M3;
  const blockDepth = depthPerMetreFromDensity(blockGiven ?? blockDefaults.leafAreaDensityM2M3) * foliageShare;
  const blockFactors = foliageOf(blockGiven);
  return {
    heightM,
    baseM: Math.min(footM, heightM * 0.9),
    widthM,
    porosityOn,
    porosityOff,
    depthPerMOn: isBelt ? depthPerMetreFromPorosity(porosityOn, widthM) : blockDepth * blockFactors.leafOn,
    depthPerMOff: isBelt
      ? depthPerMetreFromPorosity(porosityOff, widthM)
      : blockDepth * leafOffRatio * blockFactors.leafOff,
    solid: false,
    calendar,
  };
}

/** A wall, fence or net; null outside its years. */
export function wallAtYear(
  document: SiteDocument,
  wall: FeatureOf<'wall'>,
  moment: GrowthMoment,
): WindbreakStand | null {
  const { fromYear, toYear, heightM, opticalPorosity } = wall.properties;
  const calendarYear = calendarYearOf(document, moment);
  if (fromYear !== undefined && calendarYear < fromYear) return null;
  if (toYear !== undefined && calendarYear > toYear) return null;
  const porosity = opticalPorosity ?? wallDefaults.opticalPorosity;
  const depthPerM = depthPerMetreFromPorosity(porosity, WALL_WIDTH_M);
  return {
    heightM: heightM ?? wallDefaults.heightM,
    baseM: 0,
    widthM: WALL_WIDTH_M,
    porosityOn: porosity,
    porosityOff: porosity,
    depthPerMOn: depthPerM,
    depthPerMOff: depthPerM,
    solid: porosity === 0,
    calendar: LEAF_CALENDARS.evergreen,
  };
}

export const buildingHeightM = (building: FeatureOf<'building'>): number =>
  building.properties.heightM ?? buildingDefaults.heightM;
