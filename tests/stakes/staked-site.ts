import type { LonLat } from '../../src/geo/frame.ts';
import { destination } from '../../src/geo/geodesic.ts';
import type { SiteOutdoors } from '../../src/outside/site-outdoors.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { parseSite } from '../../src/site/parse-site.ts';

/** A place metres east and north of another. */
export const beside = ([lon, lat]: LonLat, eastM: number, northM: number): [number, number] => {
  const [lon2, lat2] = destination(
    [lon, lat],
    (Math.atan2(eastM, northM) * 180) / Math.PI,
    Math.hypot(eastM, northM),
  );
  return [lon2, lat2];
};

export const HERE: LonLat = [-64.5, 45.1];

type Properties = Readonly<Record<string, unknown>>;
export const thing = (id: string, type: string, coordinates: unknown, properties: Properties) => ({
  id,
  type: 'Feature',
  geometry: { type, coordinates },
  properties,
});

export const boxAround = (centre: LonLat, halfEastM: number, halfNorthM: number): [number, number][] => [
  beside(centre, -halfEastM, -halfNorthM),
  beside(centre, halfEastM, -halfNorthM),
  beside(centre, halfEastM, halfNorthM),
  beside(centre, -halfEastM, halfNorthM),
  beside(centre, -halfEastM, -halfNorthM),
];

/** A field of 120 m by 100 m around a place and what stands on it, as a site file would give it. */
export function documentOf(
  features: readonly unknown[],
  { centre = HERE, ...site }: { readonly centre?: LonLat } & Properties = {},
): SiteDocument {
  const text = JSON.stringify({
    type: 'FeatureCollection',
    site: { formatVersion: 1, name: 'Small Close', timeZone: 'America/Halifax', baseYear: 2027, ...site },
    features: [
      thing('f1', 'Polygon', [boxAround(centre, 60, 50)], { kind: 'field', name: 'Small Close' }),
      ...features,
    ],
  });
  return parseSite(text, 'small.site.geojson').document;
}

export function stakedSite(document: SiteDocument): SiteOutdoors {
  const frame = siteFrame(document);
  return { document, layout: null, frame, ground: siteGround(document, frame, null).ground };
}

/** A slim pointed tree of ten metres: its tip is cast by its very top, however steep the sun. */
export const POINTED = { kind: 'tree', tag: 'T1', heightM: 10, crownForm: 'cone', crownRadiusM: 0.3 };
