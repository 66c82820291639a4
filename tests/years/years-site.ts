import type { SceneOptions } from '../../src/scene/options.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import type { SiteRecord } from '../../src/site/records/site.ts';

/** Metres east and north of an invented place. */
export const at = (eastM: number, northM: number): [number, number] => [
  -64.5 + eastM / 78_700,
  45.1 + northM / 111_100,
];

const feature = (id: string, geometry: unknown, properties: object): SiteFeature =>
  ({ type: 'Feature', id, geometry, properties }) as unknown as SiteFeature;

export const tree = (id: string, [x, y]: readonly [number, number], properties: object = {}): SiteFeature =>
  feature(
    id,
    { type: 'Point', coordinates: at(x, y) },
    { kind: 'tree', status: 'planned', species: 'Malus domestica', plantedYear: 2027, ...properties },
  );

/** A line from west to east. */
export const line = (id: string, northM: number, properties: object, halfM = 60): SiteFeature =>
  feature(id, { type: 'LineString', coordinates: [at(-halfM, northM), at(halfM, northM)] }, properties);

/** Level land on which the wind blows from the north all year. */
export const northWind = (
  features: readonly SiteFeature[],
  site: Partial<SiteRecord> = {},
): SiteDocument => ({
  type: 'FeatureCollection',
  site: {
    formatVersion: 1,
    name: 'Test',
    timeZone: 'America/Halifax',
    baseYear: 2027,
    wind: { heightM: 10, sectors: [{ fromDeg: 0, frequency: 1, meanSpeedMps: 5 }] },
    ...site,
  },
  features,
});

export function optionsOf(document: SiteDocument): SceneOptions {
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  return { year: 0, layout: null, pace: 'usual', frame, ground, weather: null };
}
