import { distanceM } from '../geo/geodesic.ts';
import { addFeatures, type Drawn } from '../site/actions/add-feature.ts';
import { deleteFeatures } from '../site/actions/delete-feature.ts';
import { setProperties } from '../site/actions/set-properties.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';
import { keptSpots, type MeterReading } from './kept-spots.ts';
import { METER_HEIGHT_M, type SpotPlan, type WindSpot } from './spot-plan.ts';

/** Spots of one wind and day nearer than this are the same. */
const SAME_SPOT_M = 0.5;

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** The spot as the site keeps it: a point with what is expected there, waiting for its reading. */
function toKeep({ belt, date, wind }: SpotPlan, spot: WindSpot): Drawn {
  const { expected } = spot;
  return {
    properties: {
      kind: 'measure',
      name: `Wind ${spot.words.endsWith('behind') ? `${spot.words} ${belt.label}` : `at ${spot.words} behind ${belt.label}`}`,
      quantity: 'wind',
      of: belt.id,
      expected: {
        date,
        windFromDeg: rounded(wind.fromDeg, 1),
        windMps: rounded(wind.speedMps, 2),
        readingHeightM: METER_HEIGHT_M,
        distanceH: rounded(spot.distanceH, 2),
        heightM: rounded(belt.heightM, 2),
        share: rounded(expected.share, 3),
        functionLow: rounded(expected.byFunction.low, 3),
        functionHigh: rounded(expected.byFunction.high, 3),
        low: rounded(expected.low, 3),
        high: rounded(expected.high, 3),
      },
    },
    geometry: { type: 'Point', coordinates: [...spot.lonLat] as [number, number] },
  };
}

/**
 * Writes down what is expected at each spot of a plan. What waits already for the same spot, wind and day is taken out
 * for it; what has been read stays as it stood.
 */
export function writeDown(document: SiteDocument, plan: SpotPlan): SiteDocument {
  const again = keptSpots(document, plan.belt.id).filter(
    ({ reading, lonLat, expected }) =>
      reading === null &&
      expected.date === plan.date &&
      expected.windFromDeg === rounded(plan.wind.fromDeg, 1) &&
      plan.spots.some((spot) => distanceM(spot.lonLat, lonLat) < SAME_SPOT_M),
  );
  const before =
    again.length > 0
      ? deleteFeatures(
          document,
          again.map(({ id }) => id),
        )
      : document;
  return addFeatures(
    before,
    plan.spots.map((spot) => toKeep(plan, spot)),
  ).document;
}

/**
 * Puts a reading beside what was written down; that stays as it stood.
 * @throws BadInputError for speeds that no meter can have shown.
 */
export function keepMeters(document: SiteDocument, id: FeatureId, reading: MeterReading): SiteDocument {
  const { openMps, spotMps, minutes, windFromDeg } = reading;
  if (!(openMps > 0))
    throw new BadInputError(`The meter in the open showed ${openMps} m/s; expected a mean above 0.`);
  if (!(spotMps >= 0))
    throw new BadInputError(`The meter at the spot showed ${spotMps} m/s; expected a mean of 0 or more.`);
  if (!(minutes > 0)) throw new BadInputError(`The meters ran ${minutes} minutes; expected more than 0.`);
  return setProperties(document, [id], {
    value: rounded(spotMps / openMps, 3),
    date: reading.date,
    time: reading.time ?? undefined,
    openMps: rounded(openMps, 2),
    spotMps: rounded(spotMps, 2),
    minutes,
    windFromDeg: rounded(windFromDeg, 1),
    method: `two hand meters at ${METER_HEIGHT_M} m for ${minutes} minutes`,
  });
}
