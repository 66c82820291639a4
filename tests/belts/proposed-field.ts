import type { ProposeSetting } from '../../src/belts/propose-setting.ts';
import type { BeltWish } from '../../src/belts/propose-types.ts';
import type { LonLat } from '../../src/geo/frame.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';

const CENTRE: LonLat = [10.2, 52.1];
const M_PER_DEG = 111_320;

/** A place so many metres east and north of the middle. */
export const at = (eastM: number, northM: number): [number, number] => [
  CENTRE[0] + eastM / (M_PER_DEG * Math.cos((CENTRE[1] * Math.PI) / 180)),
  CENTRE[1] + northM / M_PER_DEG,
];

const polygon = (corners: readonly (readonly [number, number])[]) => ({
  type: 'Polygon' as const,
  coordinates: [[...corners, corners[0]].map(([x, y]) => at(x, y))],
});

/** A field with a bay and a slanting side, windy from the west, with a drain, a gate, a barn and a line. */
export function oddField(more: readonly SiteFeature[] = []): SiteDocument {
  const sectors = ['growing', 'rest'].flatMap((season) =>
    Array.from({ length: 8 }, (_, i) => ({
      fromDeg: i * 45,
      frequency: i === 6 ? 0.4 : i === 5 ? 0.18 : 0.07,
      meanSpeedMps: i === 6 ? 5 : 3.5,
      weibullK: 2,
      season: season as 'growing' | 'rest',
    })),
  );
  return {
    type: 'FeatureCollection',
    site: {
      formatVersion: 1,
      name: 'Odd corner',
      timeZone: 'Europe/Berlin',
      baseYear: 2027,
      wind: { heightM: 10, calmShare: 0, sectors },
    },
    features: [
      {
        type: 'Feature',
        id: 'odd',
        geometry: polygon([
          [-70, -50],
          [60, -60],
          [80, 10],
          [30, 20],
          [40, 70],
          [-60, 60],
        ]),
        properties: { kind: 'field', name: 'Odd corner', taken: true },
      },
      {
        type: 'Feature',
        id: 'drain',
        geometry: { type: 'LineString', coordinates: [at(-90, -10), at(90, -20)] },
        properties: { kind: 'service', reason: 'drain', offsetM: 4 },
      },
      {
        type: 'Feature',
        id: 'gate',
        geometry: polygon([
          [-72, 20],
          [-58, 20],
          [-58, 26],
          [-72, 26],
        ]),
        properties: { kind: 'keepOut', reason: 'gate', offsetM: 0 },
      },
      {
        type: 'Feature',
        id: 'barn',
        geometry: polygon([
          [0, 40],
          [10, 40],
          [10, 48],
          [0, 48],
        ]),
        properties: { kind: 'building', heightM: 6 },
      },
      ...more,
    ] as SiteFeature[],
  } as SiteDocument;
}

/** A setting to propose belts in. */
export function settingOf(document: SiteDocument, wish: Partial<BeltWish> = {}): ProposeSetting {
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  return {
    document,
    wish: { fieldId: 'odd', cutShare: 0.3, overShare: 0.6, year: 12, season: 'growing', ...wish },
    refused: [],
    scene: { year: 12, layout: null, pace: 'usual', frame, ground, weather: null },
    readingHeightM: 1.5,
    galeMps: 10.8,
    options: USUAL_SHELTER_OPTIONS,
    lightHeightM: 0.1,
  };
}
