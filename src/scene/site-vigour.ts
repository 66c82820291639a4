import { type FittedVigour, fitVigour, vigourOf, vigoursWithoutEach } from '../growth/fit-vigour.ts';
import { ageAtHeight, curveOnSite } from '../growth/height-curve.ts';
import { PLANTING_HEIGHT_M } from '../growth/known-height.ts';
import { type Misses, missesOf } from '../growth/miss.ts';
import { expectedHeightM } from '../growth/plant-vigour.ts';
import { findSpecies } from '../plants/find-species.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { behindReadings, type HeightReading } from '../site/height-readings.ts';
import { type LeftReading, measuredPlants, type ToldPlant } from './measured-plants.ts';

/** One measured height beside what the model expected of the plant from its start. Heights in metres. */
export interface ComparedReading {
  readonly of: FeatureId;
  readonly label: string;
  readonly species: string;
  readonly commonName: string;
  readonly rootstockFactor: number;
  readonly plantedYear: number | null;
  readonly reading: HeightReading;
  /** Seasons after planting at which the expected curve of a plant of usual size has the expected height. */
  readonly onCurve: number;
  /** With the vigour that the site has now. */
  readonly expectedM: number;
  /** With the vigour that the readings say; null: too few say anything. */
  readonly fittedM: number | null;
}

export interface SpeciesVigour extends FittedVigour {
  readonly species: string;
  readonly commonName: string;
}

/** What measured heights say of how well things grow here. */
export interface SiteVigour {
  /** As the site has it now; 1 where it says nothing. */
  readonly now: number;
  readonly readings: readonly ComparedReading[];
  readonly left: readonly LeftReading[];
  /** Plants that say something. */
  readonly plants: number;
  /** Null: too few. Species' vigour is against the site's. */
  readonly fit: { readonly site: FittedVigour; readonly species: readonly SpeciesVigour[] } | null;
  readonly before: Misses | null;
  readonly after: Misses | null;
  /** Each plant beside what the others alone would have had expected of it: what the fit is worth for one that was not measured. */
  readonly untold: Misses | null;
  /** Plants that the file has a newer reading of than what the model starts from. */
  readonly behind: readonly FeatureId[];
  /** False where the site has what the readings say, to the digits that are kept. */
  readonly isNews: boolean;
}

/** Vigour is kept to so many decimals. */
const VIGOUR_DIGITS = 2;
export const kept = (vigour: number): number => Number(vigour.toFixed(VIGOUR_DIGITS));

export function siteVigour(document: SiteDocument, layout: string | null): SiteVigour {
  const { told, left } = measuredPlants(document, layout);
  const now = document.site.vigour ?? 1;
  const ofSpecies = (name: string) => findSpecies(name, document.site.species)?.vigour ?? 1;
  const fitted = fitVigour(told);
  const withoutEach = vigoursWithoutEach(told);
  // A vigour that the site gives a species of which too few were measured stays.
  const readings = told.flatMap((plant) => {
    const own = ofSpecies(plant.species);
    return compared(plant, now * own, fitted && vigourOf(fitted, plant.species, own));
  });
  const pairs = (expected: (reading: ComparedReading) => number) =>
    missesOf(readings.map((reading) => ({ readM: reading.reading.heightM, expectedM: expected(reading) })));
  const species = fitted
    ? [...fitted.species].map(([name, vigour]) => ({
        ...vigour,
        species: name,
        commonName: told.find((plant) => plant.species === name)?.commonName ?? name,
      }))
    : [];
  return {
    now,
    readings,
    left,
    plants: told.length,
    fit: fitted ? { site: fitted.site, species } : null,
    before: pairs(({ expectedM }) => expectedM),
    after: fitted ? pairs(({ fittedM, expectedM }) => fittedM ?? expectedM) : null,
    untold: missesOf(
      told.flatMap((plant, i) => {
        const vigour = withoutEach[i];
        return vigour === null
          ? []
          : compared(plant, vigour, null).map(({ reading, expectedM }) => ({
              readM: reading.heightM,
              expectedM,
            }));
      }),
    ),
    behind: behindReadings(document, layout).map(({ plant }) => plant.id),
    isNews:
      fitted !== null &&
      (kept(now) !== kept(fitted.site.vigour) ||
        species.some((each) => kept(each.vigour) !== kept(ofSpecies(each.species)))),
  };
}

function compared(plant: ToldPlant, vigour: number, fittedVigour: number | null): ComparedReading[] {
  const { id, label, species, commonName, plantedYear, rootstockFactor } = plant;
  const curve = curveOnSite(plant.curve, rootstockFactor * vigour, 'usual');
  const headStart = ageAtHeight(curve, plant.startM) - ageAtHeight(curve, PLANTING_HEIGHT_M);
  return plant.kept.map((reading, i) => ({
    of: id,
    label,
    species,
    commonName,
    rootstockFactor,
    plantedYear,
    reading,
    onCurve: plant.readings[i].seasons + headStart,
    expectedM: expectedHeightM(plant, vigour, plant.readings[i].seasons),
    fittedM: fittedVigour === null ? null : expectedHeightM(plant, fittedVigour, plant.readings[i].seasons),
  }));
}
