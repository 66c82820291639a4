/** All belts that could be planted on a field: every species that is tried at every place where it may stand. */
import type { Frame, LonLat } from '../geo/frame.ts';
import { ringToLocal, ringToLonLat } from '../geo/rasterise.ts';
import type { GrowthMoment } from '../scene/options.ts';
import type { Drawn } from '../site/actions/add-feature.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { noGo } from './propose-no-go.ts';
import { fieldPlaces } from './propose-places.ts';
import { beltPlants } from './propose-species.ts';
import type { BeltOption, BeltPlace, BeltPlant, BeltWish } from './propose-types.ts';

export interface OptionSetting {
  readonly document: SiteDocument;
  readonly frame: Frame;
  readonly field: FieldFeature;
  readonly wish: BeltWish;
  readonly moment: GrowthMoment;
  /** Grid azimuths of the winds that belts across the field shall meet square, radians. */
  readonly windsFromRad: readonly number[];
  /** Lines that a person would not have. */
  readonly refused: readonly (readonly LonLat[])[];
}

export function beltOptions(setting: OptionSetting): BeltOption[] {
  const { document, frame, field, wish, moment, windsFromRad, refused } = setting;
  const plants = beltPlants(document, wish.year, wish.season);
  if (plants.length === 0) return [];
  const rings = field.geometry.coordinates.map((ring) => ringToLocal(frame, ring));
  const mayStand = noGo(document, frame, moment, refused);
  const placesFor = fieldPlaces(rings, windsFromRad, Math.max(...plants.map(({ heightM }) => heightM)));
  return plants.flatMap((plant) =>
    placesFor(plant, mayStand).map(
      (place): BeltOption => ({
        place,
        plant,
        properties: propertiesOf(document, plant, moment.layout),
      }),
    ),
  );
}

function propertiesOf(
  document: SiteDocument,
  plant: BeltPlant,
  layout: string | null,
): BeltOption['properties'] {
  return {
    kind: 'belt',
    status: 'planned',
    species: plant.species,
    ...(plant.mixedWith ? { alsoSpecies: [plant.mixedWith.species] } : {}),
    plantedYear: document.site.baseYear,
    widthM: plant.widthM,
    opticalPorosityLeafOn: plant.porosityOn,
    opticalPorosityLeafOff: plant.porosityOff,
    ...(layout === null ? {} : { layout }),
  };
}

/** An option as it would be added to the site. */
export const drawnOption = (frame: Frame, { place, properties }: BeltOption): Drawn => ({
  properties,
  geometry: {
    type: 'LineString',
    coordinates: ringToLonLat(frame, place.line).map(([lon, lat]): [number, number] => [lon, lat]),
  },
});

/** Whether two options cannot both be planted: on the same stretch of ground, or one through the other. */
export function excludeEachOther(a: BeltOption, b: BeltOption): boolean {
  if (a.place.run === b.place.run)
    return Math.min(a.place.to, b.place.to) - Math.max(a.place.from, b.place.from) > 1e-3;
  return a.place.where === 'across' || b.place.where === 'across' ? linesCross(a.place, b.place) : false;
}

function linesCross({ line: a }: BeltPlace, { line: b }: BeltPlace): boolean {
  const side = (p: readonly number[], q: readonly number[], r: readonly number[]) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  for (let i = 1; i < a.length; i++)
    for (let k = 1; k < b.length; k++)
      if (
        side(a[i - 1], a[i], b[k - 1]) * side(a[i - 1], a[i], b[k]) < 0 &&
        side(b[k - 1], b[k], a[i - 1]) * side(b[k - 1], b[k], a[i]) < 0
      )
        return true;
  return false;
}
