import type { LonLat } from '../geo/frame.ts';
import { featuresOfKind } from '../site/chosen-features.ts';
import type { FeatureId, FeatureOf, SiteDocument, SiteFeature } from '../site/document.ts';
import type { ExpectedWind } from '../site/records/measure.ts';

/** What two meters showed. */
export interface MeterReading {
  /** YYYY-MM-DD and HH:MM on the clocks of the site. */
  readonly date: string;
  readonly time: string | null;
  readonly openMps: number;
  readonly spotMps: number;
  readonly minutes: number;
  /** Where the wind came from, degrees clockwise from true north. */
  readonly windFromDeg: number;
}

/** What was written down for a spot before anyone measured, and the reading once there is one. */
export interface KeptSpot {
  readonly id: FeatureId;
  readonly name: string;
  readonly lonLat: LonLat;
  readonly expected: ExpectedWind;
  /** Null: not read yet. */
  readonly reading: MeterReading | null;
}

type Measure = FeatureOf<'measure'>;

/** True for what was written down about the wind at a spot, read or not. */
export const isKeptSpot = (feature: SiteFeature): feature is Measure =>
  feature.properties.kind === 'measure' &&
  feature.properties.quantity === 'wind' &&
  feature.properties.expected !== undefined;

/** The readings of one belt's wind that the site keeps and those it waits for, by day, time and distance. */
export function keptSpots(document: SiteDocument, of: FeatureId): KeptSpot[] {
  return featuresOfKind(document.features, 'measure')
    .flatMap((feature): KeptSpot[] => {
      const { expected, name } = feature.properties;
      if (!isKeptSpot(feature) || !expected || String(feature.properties.of) !== String(of)) return [];
      const [lon, lat] = feature.geometry.coordinates;
      return [
        {
          id: feature.id,
          name: name ?? '',
          lonLat: [lon, lat],
          expected,
          reading: readingOf(feature, expected),
        },
      ];
    })
    .sort((a, b) => whenOf(a).localeCompare(whenOf(b)) || a.expected.distanceH - b.expected.distanceH);
}

const whenOf = ({ expected, reading }: KeptSpot): string =>
  reading ? `${reading.date} ${reading.time ?? ''}` : expected.date;

function readingOf({ properties }: Measure, expected: ExpectedWind): MeterReading | null {
  const { openMps, spotMps, minutes, date, time, windFromDeg } = properties;
  if (openMps === undefined || spotMps === undefined) return null;
  return {
    date: (date ?? expected.date).slice(0, 10),
    time: time ?? null,
    openMps,
    spotMps,
    minutes: minutes ?? 0,
    windFromDeg: windFromDeg ?? expected.windFromDeg,
  };
}
