import type { FeatureId, SiteDocument } from '../document.ts';
import { featureById } from '../find-feature.ts';
import { HEIGHT_DIGITS, type HeightReading, heightReadings } from '../height-readings.ts';
import { middlePlace } from '../places.ts';
import { isWoody } from '../woody.ts';
import { addFeatures, type Drawn } from './add-feature.ts';
import { deleteFeatures } from './delete-feature.ts';
import { setProperties } from './set-properties.ts';

/** A height as it was found outside, as of the end of a year's season. */
export interface FoundHeight {
  readonly heightM: number;
  readonly measuredYear: number;
  /** The day, YYYY-MM-DD, where it is known. */
  readonly date?: string;
  readonly method?: string;
}

/**
 * Gives a thing the height that was found outside. Of what grows it is kept as a reading, and so is the measured height
 * that it had; the newest of them is what it grows on from. The height at planting stays as `plantedHeightM`.
 * @throws BadInputError when it is not there, or the height is none.
 */
export function takeHeight(document: SiteDocument, id: FeatureId, found: FoundHeight): SiteDocument {
  const feature = featureById(document, id);
  const heightM = Number(found.heightM.toFixed(HEIGHT_DIGITS));
  if (!isWoody(feature)) return setProperties(document, [id], { heightM });
  const [lon, lat] = middlePlace(feature.geometry);
  const reading = (properties: object): Drawn => ({
    properties: { kind: 'measure', quantity: 'height', of: id, ...properties },
    geometry: { type: 'Point', coordinates: [lon, lat] },
  });
  const { layout } = feature.properties;
  const own = heightReadings(document)
    .get(id)
    ?.find(({ measure }) => measure === null);
  const kept = [
    ...(own ? [{ value: own.heightM, measuredYear: own.year }] : []),
    {
      value: heightM,
      measuredYear: found.measuredYear,
      ...(found.date ? { date: found.date } : {}),
      ...(found.method ? { method: found.method } : {}),
    },
  ].map((part) => reading({ ...part, ...(layout === undefined ? {} : { layout }) }));
  return startFromNewest(addFeatures(document, kept).document, id);
}

/**
 * Takes a reading away. Where its plant grew on from it, it starts from the newest that is left; without any, from its
 * height at planting.
 * @throws BadInputError for a reading that is not there.
 */
export function forgetHeight(document: SiteDocument, id: FeatureId, measure: FeatureId): SiteDocument {
  const before = heightReadings(document)
    .get(id)
    ?.find((reading) => reading.measure === measure);
  const without = deleteFeatures(document, [measure]);
  const left = heightReadings(without).get(id) ?? [];
  // What the plant itself says of the same year was the reading's echo.
  const isEcho = ({ year, heightM }: HeightReading) => year === before?.year && heightM === before.heightM;
  const others = left.filter((reading) => reading.measure !== null || !isEcho(reading));
  const newest = others.at(-1);
  return newest ? startFrom(without, id, newest) : startFromPlanting(without, id);
}

/** Sets the height that a plant grows on from to the newest that was read of it. */
export function startFromNewest(document: SiteDocument, id: FeatureId): SiteDocument {
  const newest = heightReadings(document).get(id)?.at(-1);
  return newest ? startFrom(document, id, newest) : document;
}

function startFrom(document: SiteDocument, id: FeatureId, { heightM, year }: HeightReading): SiteDocument {
  const feature = featureById(document, id);
  if (!isWoody(feature)) return document;
  const { heightM: before, measuredYear, plantedYear, plantedHeightM } = feature.properties;
  const wasAtPlanting = plantedYear !== undefined && measuredYear === undefined;
  return setProperties(document, [id], {
    heightM,
    measuredYear: year,
    plantedHeightM: wasAtPlanting ? before : plantedHeightM,
  });
}

/** A plant whose height before is not known keeps that which was read last. */
function startFromPlanting(document: SiteDocument, id: FeatureId): SiteDocument {
  const feature = featureById(document, id);
  if (!isWoody(feature) || feature.properties.plantedYear === undefined) return document;
  const { plantedHeightM } = feature.properties;
  return setProperties(document, [id], {
    heightM: plantedHeightM,
    measuredYear: undefined,
    plantedHeightM: undefined,
  });
}
