import { chosenFeatures, featuresOfKind } from './chosen-features.ts';
import type { FeatureId, SiteDocument } from './document.ts';
import { firstPlace } from './places.ts';
import { seasonPosition } from './season-position.ts';
import { isWoody, type Woody } from './woody.ts';

/** A height that was read of something that grows. */
export interface HeightReading {
  /** The reading in the file; null: the plant's own `heightM` of its `measuredYear`. */
  readonly measure: FeatureId | null;
  readonly heightM: number;
  readonly date: string | null;
  readonly method: string | null;
  /** Growing seasons, as `seasonPosition` counts them. */
  readonly position: number;
  /** The season at whose end it counts. */
  readonly year: number;
}

/** `method` of a height that readings of the wind fit: good enough to start from, not to tell how well things grow. */
export const READ_FROM_WIND = 'from the wind behind it';

/** Heights are kept to this many decimals of a metre: nobody knows a tree closer. */
export const HEIGHT_DIGITS = 1;
const SAME_M = 0.5 * 10 ** -HEIGHT_DIGITS;

/**
 * The heights that were read of each plant, oldest first: the `measure` features of quantity `height` that name it and
 * say when, and its own `heightM` where `measuredYear` says of which year, unless a reading says the same.
 */
export function heightReadings(document: SiteDocument): Map<FeatureId, HeightReading[]> {
  const plants = new Map(document.features.filter(isWoody).map((plant) => [String(plant.id), plant]));
  const readings = new Map<FeatureId, HeightReading[]>();
  const add = (plant: Woody, reading: HeightReading) =>
    readings.set(plant.id, [...(readings.get(plant.id) ?? []), reading]);
  for (const { id, properties } of featuresOfKind(document.features, 'measure')) {
    const { quantity, of, value, date, measuredYear, method } = properties;
    const plant = of === undefined ? undefined : plants.get(String(of));
    if (quantity !== 'height' || !plant || value === undefined || !(date ?? measuredYear)) continue;
    const [, latDeg] = firstPlace(plant.geometry.coordinates);
    const position = date ? seasonPosition(document.site, latDeg, date) : Number(measuredYear);
    add(plant, {
      measure: id,
      heightM: value,
      date: date?.slice(0, 10) ?? null,
      method: method ?? null,
      position,
      year: measuredYear ?? Math.round(position),
    });
  }
  for (const plant of plants.values()) {
    const { heightM, measuredYear } = plant.properties;
    if (heightM === undefined || measuredYear === undefined) continue;
    const isWritten = readings
      .get(plant.id)
      ?.some((reading) => reading.year === measuredYear && Math.abs(reading.heightM - heightM) <= SAME_M);
    if (!isWritten)
      add(plant, {
        measure: null,
        heightM,
        date: null,
        method: null,
        position: measuredYear,
        year: measuredYear,
      });
  }
  for (const list of readings.values()) list.sort((a, b) => a.position - b.position);
  return readings;
}

/** Plants of a layout whose newest reading is not what the model starts from. */
export function behindReadings(
  document: SiteDocument,
  layout: string | null,
): { readonly plant: Woody; readonly newest: HeightReading }[] {
  const readings = heightReadings(document);
  return chosenFeatures(document, layout)
    .filter(isWoody)
    .flatMap((plant) => {
      const newest = readings.get(plant.id)?.at(-1);
      const { heightM, measuredYear } = plant.properties;
      if (!newest || newest.measure === null) return [];
      const isTaken = measuredYear === newest.year && Math.abs((heightM ?? 0) - newest.heightM) <= SAME_M;
      return isTaken ? [] : [{ plant, newest }];
    });
}
