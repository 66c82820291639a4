import type { Position } from 'geojson';
import type { LonLat } from '../../src/geo/frame.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { placeBeside } from '../../src/site/places.ts';

/** Where the small sites of these tests lie. */
const HERE: LonLat = [-64.5, 45.1];

/** Metres east and north of HERE as a position. */
export const at = (eastM: number, northM: number): [number, number] => {
  const [lon, lat] = placeBeside(HERE, eastM, northM);
  return [lon, lat];
};
export const line = (...places: [number, number][]): [number, number][] => places.map(([e, n]) => at(e, n));
/** A closed box, counter-clockwise. */
export const box = (west: number, south: number, east: number, north: number): [number, number][][] => [
  line([west, south], [east, south], [east, north], [west, north], [west, south]),
];

type Loose = { kind: string; [key: string]: unknown };
export const feature = (id: string | number | undefined, properties: Loose, coordinates: unknown) => ({
  type: 'Feature' as const,
  ...(id === undefined ? {} : { id }),
  properties,
  geometry: { type: shapeOf(coordinates), coordinates },
});
const shapeOf = (c: unknown): string =>
  typeof (c as Position)[0] === 'number'
    ? 'Point'
    : typeof (c as Position[])[0][0] === 'number'
      ? 'LineString'
      : 'Polygon';

/** A sound document around some features. */
export const siteOf = (features: readonly unknown[], site: Record<string, unknown> = {}): SiteDocument =>
  ({
    type: 'FeatureCollection',
    site: { formatVersion: 1, name: 'Small', timeZone: 'America/Halifax', baseYear: 2027, ...site },
    features,
  }) as unknown as SiteDocument;

/** One of everything, 200 m of ground, drawn by hand. */
export const oneOfEach = (): SiteDocument =>
  siteOf(
    [
      feature('f1', { kind: 'field', name: 'Pound Field', taken: true }, box(0, 0, 100, 80)),
      feature('f2', { kind: 'field', name: 'Upper Lea' }, box(120, 0, 200, 80)),
      feature(
        'b1',
        { kind: 'belt', species: 'Picea abies', heightM: 14, widthM: 4 },
        line([0, 10], [0, 70], [40, 79]),
      ),
      feature('w1', { kind: 'block', heightM: 18, baseHeightM: 2 }, box(-60, 0, -10, 60)),
      feature(
        't1',
        { kind: 'tree', tag: 'N1', species: 'Juglans regia', heightM: 6, crownBaseM: 2 },
        at(50, 40),
      ),
      feature(
        't2',
        {
          kind: 'tree',
          tag: 'N2',
          species: 'Juglans regia',
          status: 'planned',
          plantedYear: 2028,
          layout: 'A',
        },
        at(70, 40),
      ),
      feature('h1', { kind: 'building', heightM: 5 }, box(80, 60, 90, 70)),
      feature(
        'n1',
        { kind: 'wall', name: 'Net', heightM: 3, opticalPorosity: 0.5, fromYear: 2027, toYear: 2033 },
        line([10, 2], [60, 2]),
      ),
      feature('p1', { kind: 'patch', name: 'Currants', layer: 'shrub' }, box(20, 20, 40, 40)),
      feature('u1', { kind: 'planting', species: 'Ribes nigrum', spacingM: 1.2 }, line([22, 30], [38, 30])),
      feature('x1', { kind: 'path', offsetM: 1 }, line([0, 50], [100, 50])),
      feature('k1', { kind: 'keepOut', reason: 'gate' }, box(95, 0, 100, 5)),
      feature('s1', { kind: 'service', reason: 'overhead line', offsetM: 5 }, line([-20, 75], [110, 75])),
      feature('m1', { kind: 'measure', quantity: 'light', value: 0.4, date: '2027-06-21' }, at(30, 30)),
    ],
    { layouts: [{ name: 'A' }, { name: 'B' }] },
  );
