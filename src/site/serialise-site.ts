import type { Position } from 'geojson';
import type { SiteDocument, SiteFeature } from './document.ts';
import { prettyJson } from './pretty-json.ts';
import { REGISTRY } from './records/registry.ts';
import { siteRecord } from './records/site.ts';

/** Decimals of a degree that are written: 0.1 mm on the ground. */
const COORDINATE_DECIMALS = 9;

/**
 * The text of a site file. Members come in a fixed order, known ones first, unknown ones after them in the order in
 * which they were read; rings turn as RFC 7946 has it (outer counter-clockwise, holes clockwise); boxes are renewed.
 */
export function serialiseSite(document: SiteDocument): string {
  const { type, site, features, otherFeatures = [], bbox, ...foreign } = document;
  const written = features.map(writtenFeature);
  const all = [...written, ...otherFeatures];
  return `${prettyJson({
    type,
    ...(bbox === undefined ? {} : { bbox: boxOf(all) }),
    site: inOrder(site, Object.keys(siteRecord.shape)),
    ...foreign,
    features: all,
  })}\n`;
}

function writtenFeature(feature: SiteFeature): Record<string, unknown> {
  const { type, id, properties, geometry, bbox, ...foreign } = feature;
  const keys = ['kind', ...REGISTRY[properties.kind].fields.map((field) => field.key)];
  const { type: shape, coordinates, bbox: geometryBox, ...foreignOfGeometry } = geometry;
  const written = {
    type: shape,
    ...(geometryBox === undefined ? {} : { bbox: boxOf(coordinates) }),
    coordinates: rounded(shape === 'Polygon' ? rightWay(coordinates as Position[][]) : coordinates),
    ...foreignOfGeometry,
  };
  return {
    type,
    id,
    ...(bbox === undefined ? {} : { bbox: boxOf(coordinates) }),
    properties: inOrder(properties, keys),
    geometry: written,
    ...foreign,
  };
}

function inOrder(
  record: Readonly<Record<string, unknown>>,
  keys: readonly string[],
): Record<string, unknown> {
  const known = keys.filter((key) => record[key] !== undefined).map((key) => [key, record[key]] as const);
  const unknown = Object.entries(record).filter(([key]) => !keys.includes(key));
  return Object.fromEntries([...known, ...unknown]);
}

function rounded(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(rounded);
  // Adding 0 turns -0 into 0.
  return typeof value === 'number' ? Number(value.toFixed(COORDINATE_DECIMALS)) + 0 : value;
}

/** Outer ring counter-clockwise, holes clockwise, seen on a map with north up. */
const rightWay = (rings: readonly Position[][]): Position[][] =>
  rings.map((ring, r) => (turnsLeft(ring) === (r === 0) ? ring : ring.toReversed()));

function turnsLeft(ring: readonly Position[]): boolean {
  const [x0, y0] = ring[0];
  let doubleArea = 0;
  for (let i = 0; i + 1 < ring.length; i++)
    doubleArea += (ring[i][0] - x0) * (ring[i + 1][1] - y0) - (ring[i + 1][0] - x0) * (ring[i][1] - y0);
  return doubleArea > 0;
}

/** West, south, east, north of every position anywhere inside. */
function boxOf(value: unknown): [number, number, number, number] | undefined {
  const box: [number, number, number, number] = [180, 90, -180, -90];
  const visit = (inner: unknown): void => {
    if (Array.isArray(inner)) {
      if (typeof inner[0] === 'number' && typeof inner[1] === 'number') {
        box[0] = Math.min(box[0], inner[0]);
        box[1] = Math.min(box[1], inner[1]);
        box[2] = Math.max(box[2], inner[0]);
        box[3] = Math.max(box[3], inner[1]);
      } else inner.forEach(visit);
    } else if (typeof inner === 'object' && inner !== null) {
      const { geometry, coordinates } = inner as { geometry?: unknown; coordinates?: unknown };
      visit(geometry ?? coordinates);
    }
  };
  visit(value);
  return box[0] <= box[2] ? box : undefined;
}
