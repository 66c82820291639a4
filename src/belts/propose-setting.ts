/** From a site and a wish to what the search and the engines are asked. */
import type { Frame, LonLat } from '../geo/frame.ts';
import { polygonAreaM2 } from '../geo/geodesic.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import type { GridSpec } from '../numeric/grid.ts';
import { lightScene, shelterScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import { siteGrid } from '../scene/site-grid.ts';
import { addFeatures, type Drawn } from '../site/actions/add-feature.ts';
import { chosenFeatures, featuresOfKind } from '../site/chosen-features.ts';
import type { FeatureId, FeatureOf, SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { BadInputError } from '../units/bad-input.ts';
import { QUICK_FINENESS } from '../wind/fineness.ts';
import { shelterDirections } from '../wind/shelter-directions.ts';
import type { ShelterOptions, ShelterRequest, ShelterScene } from '../wind/shelter-types.ts';
import type { BeltAim, SearchRequest } from './propose-job.ts';
import { beltOptions, drawnOption, excludeEachOther } from './propose-options.ts';
import type { BeltOption, BeltWish, WindSeason } from './propose-types.ts';

/** All that a proposal rests on. */
export interface ProposeSetting {
  readonly document: SiteDocument;
  readonly wish: BeltWish;
  /** Lines that a person would not have. */
  readonly refused: readonly (readonly LonLat[])[];
  /** How the site is grown; the year and the pace are the proposal's own. */
  readonly scene: SceneOptions;
  readonly readingHeightM: number;
  readonly galeMps: number;
  readonly options: ShelterOptions;
  /** Height above ground at which light is read. */
  readonly lightHeightM: number;
}

/** Cells of the field: on so many belts are searched, and on so many the engines have the last word. */
export const SEARCH_CELLS = 260;
export const FIGURE_CELLS = 2500;

export function fieldOf({ document, wish }: ProposeSetting): FieldFeature {
  const field = featuresOfKind(document.features, 'field').find(({ id }) => id === wish.fieldId);
  if (field) return field;
  throw new BadInputError(`Belts are proposed for a field; there is none with the id ${wish.fieldId}.`);
}

/** @throws BadInputError for a wish that means nothing. */
export function checkWish({ cutShare, overShare, year }: BeltWish): void {
  if (!(cutShare > 0 && cutShare < 1))
    throw new BadInputError(`The wind is to be cut by a share between 0 and 1; found ${cutShare}.`);
  if (!(overShare > 0 && overShare <= 1))
    throw new BadInputError(`The share of the field must be above 0 and at most 1; found ${overShare}.`);
  if (!(Number.isInteger(year) && year >= 1 && year <= 100))
    throw new BadInputError(`The year must be a whole number from 1 to 100 after planting; found ${year}.`);
}

export const fieldAreaM2 = (field: FieldFeature): number =>
  polygonAreaM2(field.geometry.coordinates.map((ring) => ring.map(([lon, lat]): LonLat => [lon, lat])));

/** A grid of about so many cells over a field, and which of them count: there is no wind inside a building. */
export function fieldCells(
  { document, scene }: ProposeSetting,
  field: FieldFeature,
  cells: number,
): { grid: GridSpec; mask: Uint8Array } {
  const cellM = Math.sqrt(fieldAreaM2(field) / cells);
  const grid = siteGrid(document, scene.frame, { cellM, field: String(field.id), layout: scene.layout });
  const mask = cellsInside(grid, localRings(scene.frame, field));
  for (const building of featuresOfKind(chosenFeatures(document, scene.layout), 'building')) {
    const inside = cellsInside(grid, localRings(scene.frame, building));
    for (let cell = 0; cell < mask.length; cell++) if (inside[cell]) mask[cell] = 0;
  }
  return { grid, mask };
}

const localRings = (frame: Frame, area: FieldFeature | FeatureOf<'building'>) =>
  area.geometry.coordinates.map((ring) => ringToLocal(frame, ring));

/** The site with some belts planted, and their ids. */
export function planted(
  { document, scene }: ProposeSetting,
  belts: readonly BeltOption[],
): { document: SiteDocument; ids: readonly FeatureId[] } {
  return addFeatures(
    document,
    belts.map((belt): Drawn => drawnOption(scene.frame, belt)),
  );
}

/** What the shelter engine is asked of a site. */
export const shelterRequest = (
  setting: ProposeSetting,
  document: SiteDocument,
  moment: Pick<SceneOptions, 'year' | 'pace'>,
  grid: GridSpec,
): ShelterRequest => ({
  scene: shelterScene(document, { ...setting.scene, ...moment }).scene,
  grid,
  readingHeightM: setting.readingHeightM,
  galeMps: setting.galeMps,
  options: setting.options,
});

/**
 * Grid azimuths of the winds that matter in a season, radians: the axis along which most of the wind's run lies (from
 * the side that more of it comes from), and the axis across it.
 */
function leadingWinds(scene: ShelterScene, galeMps: number, season: WindSeason): number[] {
  let [sin, cos] = [0, 0];
  const runs = shelterDirections(scene.climate, scene.convergenceRad, galeMps, { directionsASector: 1 }).map(
    ({ fromRad, growing, rest }) => ({
      fromRad,
      run:
        (season === 'rest' ? 0 : (growing?.speedWeightMps ?? 0)) +
        (season === 'growing' ? 0 : (rest?.speedWeightMps ?? 0)),
    }),
  );
  for (const { fromRad, run } of runs) {
    sin += run * Math.sin(2 * fromRad);
    cos += run * Math.cos(2 * fromRad);
  }
  const axis = Math.atan2(sin, cos) / 2;
  const upwind = (of: number) =>
    runs.reduce((sum, { fromRad, run }) => sum + run * Math.cos(fromRad - of), 0) >= 0 ? of : of + Math.PI;
  return [upwind(axis), upwind(axis + Math.PI / 2)];
}

/** The search for a year, and the belts that its numbers stand for. */
export function searchFor(
  setting: ProposeSetting,
  year: number,
  aims: readonly BeltAim[],
  overShare: number,
): { request: SearchRequest; options: readonly BeltOption[] } {
  const field = fieldOf(setting);
  const moment = { ...setting.scene, year, pace: 'usual' as const };
  const { grid, mask } = fieldCells(setting, field, SEARCH_CELLS);
  const bare = shelterScene(setting.document, moment).scene;
  const options = beltOptions({
    document: setting.document,
    frame: setting.scene.frame,
    field,
    wish: { ...setting.wish, year },
    moment,
    windsFromRad: leadingWinds(bare, setting.galeMps, setting.wish.season),
    refused: setting.refused,
  });
  const all = planted(setting, options);
  const { scene, things } = shelterScene(all.document, moment);
  const numberOf = new Map(all.ids.map((id, number) => [id, number]));
  const optionOf = (thing: number) => numberOf.get(things[thing].id);
  const count = options.length;
  const excluded = new Uint8Array(count * count);
  options.forEach((a, i) => {
    options.forEach((b, k) => {
      if (i !== k && excludeEachOther(a, b)) excluded[i * count + k] = 1;
    });
  });
  const belts = scene.barriers
    .flatMap((barrier) => {
      const number = optionOf(barrier.thing);
      return number === undefined ? [] : [{ number, barrier }];
    })
    .sort((a, b) => a.number - b.number)
    .map(({ barrier }) => barrier);
  const standing = scene.barriers.filter(({ thing }) => optionOf(thing) === undefined);
  return {
    options,
    request: {
      shelter: {
        grid,
        readingHeightM: setting.readingHeightM,
        galeMps: setting.galeMps,
        options: setting.options,
        scene: { ...scene, barriers: standing },
        fineness: QUICK_FINENESS,
      },
      mask,
      rings: localRings(setting.scene.frame, field),
      belts,
      excluded,
      light: { ...lightScene(setting.document, moment).scene, surroundings: null },
      season: setting.wish.season,
      cutShare: setting.wish.cutShare,
      overShare,
      aims,
    },
  };
}
