import { careUpTo } from '../growth/care.ts';
import { PLANTING_HEIGHT_M } from '../growth/known-height.ts';
import { isBelievable, type MeasuredPlant, type PlantReading } from '../growth/plant-vigour.ts';
import { findRootstock, findSpecies } from '../plants/find-species.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { type HeightReading, heightReadings, READ_FROM_WIND } from '../site/height-readings.ts';
import { isWoody, type Woody } from '../site/woody.ts';
import { labelOf } from './things.ts';

/** A plant that says how well things grow here, with the readings that count. */
export interface ToldPlant extends MeasuredPlant {
  readonly id: FeatureId;
  readonly label: string;
  readonly commonName: string;
  readonly plantedYear: number | null;
  /** The same in the same order as `readings`. */
  readonly kept: readonly HeightReading[];
}

/** A reading that says nothing, and why. */
export interface LeftReading {
  readonly of: FeatureId;
  readonly label: string;
  readonly reading: HeightReading;
  readonly why: string;
}

export interface MeasuredPlants {
  readonly told: readonly ToldPlant[];
  readonly left: readonly LeftReading[];
}

/** After one of these a height is no longer that of a plant which was let grow. */
const CUTS = ['pollard', 'coppice', 'cutTo', 'replace', 'die'];

function cutBefore(plant: Woody, year: number): number | null {
  const cut = careUpTo(plant.properties.care, year).find(({ what }) => CUTS.includes(what));
  return cut?.year ?? null;
}

/** All that was read of the plants of a layout: what tells how well they grow, and what does not. */
export function measuredPlants(document: SiteDocument, layout: string | null): MeasuredPlants {
  const told: ToldPlant[] = [];
  const left: LeftReading[] = [];
  const all = heightReadings(document);
  for (const plant of chosenFeatures(document, layout).filter(isWoody)) {
    const readings = all.get(plant.id) ?? [];
    if (readings.length === 0) continue;
    const { properties } = plant;
    const label = labelOf(document, plant);
    const leave = (reading: HeightReading, why: string) => left.push({ of: plant.id, label, reading, why });
    const species = findSpecies(properties.species, document.site.species);
    if (!species) {
      for (const reading of readings) leave(reading, 'its species is not known');
      continue;
    }
    const { plantedYear = null } = properties;
    const start = startOf(plant, readings);
    const usual: Omit<MeasuredPlant, 'readings'> = {
      species: species.botanicalName,
      curve: species.curve,
      rootstockFactor:
        properties.kind === 'tree' ? (findRootstock(species, properties.rootstock)?.sizeFactor ?? 1) : 1,
      startM: start.heightM,
    };
    const kept: { reading: HeightReading; grown: PlantReading }[] = [];
    for (const reading of readings) {
      const seasons = reading.position - start.position;
      const grown = { seasons, heightM: reading.heightM };
      const cut = cutBefore(plant, reading.year);
      if (plantedYear === null && reading === readings[0])
        leave(
          reading,
          readings.length > 1 ? 'the others are reckoned from it' : 'its year of planting is not known',
        );
      else if (!(reading.heightM > 0)) leave(reading, 'it is no height');
      else if (reading.method === READ_FROM_WIND)
        leave(reading, 'it was told from the wind, and is not near enough');
      else if (seasons <= 0) leave(reading, 'no season has passed since it was planted');
      else if (cut !== null) leave(reading, `it was cut in ${cut}`);
      else if (reading.heightM < start.heightM)
        leave(reading, `it was ${start.heightM} m before: is it browsed, cut or mistaken?`);
      else if (!isBelievable(usual, grown))
        leave(reading, 'no vigour from 0.3 to 2 explains it: is it the right plant, year or species?');
      else kept.push({ reading, grown });
    }
    if (kept.length > 0)
      told.push({
        ...usual,
        id: plant.id,
        label,
        commonName: species.commonName,
        plantedYear,
        kept: kept.map(({ reading }) => reading),
        readings: kept.map(({ grown }) => grown),
      });
  }
  return { told, left };
}

/** Where a plant's growth is reckoned from: its planting, or else the first that was read of it. */
function startOf(
  { properties }: Woody,
  readings: readonly HeightReading[],
): { heightM: number; position: number } {
  const { plantedYear, plantedHeightM, heightM, measuredYear } = properties;
  if (plantedYear === undefined) return readings[0];
  const atPlanting = plantedHeightM ?? (measuredYear === undefined ? heightM : undefined);
  return { heightM: atPlanting ?? PLANTING_HEIGHT_M, position: plantedYear - 1 };
}
