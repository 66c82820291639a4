import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { destination } from '../../src/geo/geodesic.ts';

export type Place = [number, number];

/** A place `eastM` and `northM` from another. */
export function beside([lon, lat]: Place, eastM: number, northM: number): Place {
  const [lon2, lat2] = destination(
    [lon, lat],
    (Math.atan2(eastM, northM) * 180) / Math.PI,
    Math.hypot(eastM, northM),
  );
  return [lon2, lat2];
}

/** Closed ring of a box around a place, `halfEastM` and `halfNorthM` to each side. */
export const box = (centre: Place, halfEastM: number, halfNorthM: number): Place[] => [
  beside(centre, -halfEastM, -halfNorthM),
  beside(centre, halfEastM, -halfNorthM),
  beside(centre, halfEastM, halfNorthM),
  beside(centre, -halfEastM, halfNorthM),
  beside(centre, -halfEastM, -halfNorthM),
];

export const CENTRE: Place = [-64.5, 45.1];

interface SmallFeature {
  readonly id?: string;
  readonly type: 'Feature';
  readonly geometry: { type: string; coordinates: unknown };
  readonly properties: Record<string, unknown>;
}
export const feature = (
  id: string,
  type: string,
  coordinates: unknown,
  properties: Record<string, unknown>,
): SmallFeature => ({ id, type: 'Feature', geometry: { type, coordinates }, properties });

/** A field of 30 by 24 m, the north half a patch, nothing that stands on it. */
export function openSite(more: readonly SmallFeature[] = [], site: Record<string, unknown> = {}) {
  return {
    type: 'FeatureCollection',
    site: {
      formatVersion: 1,
      name: 'Small Close',
      timeZone: 'America/Halifax',
      baseYear: 2027,
      sunshineShareByMonth: Array(12).fill(0.5),
      wind: {
        heightM: 10,
        calmShare: 0,
        sectors: [{ fromDeg: 270, frequency: 1, meanSpeedMps: 5, weibullK: 2 }],
      },
      ...site,
    },
    features: [
      feature('f1', 'Polygon', [box(CENTRE, 15, 12)], { kind: 'field', name: 'Small Close' }),
      feature('p1', 'Polygon', [box(beside(CENTRE, 0, 6), 15, 6)], { kind: 'patch', name: 'North half' }),
      ...more,
    ],
  };
}

/** A folder of its own for one test file, removed by the returned function. */
export function workFolder(): {
  folder: string;
  put: (name: string, content: unknown) => string;
  remove: () => void;
} {
  const folder = mkdtempSync(join(tmpdir(), 'leeglade-cli-'));
  return {
    folder,
    put: (name, content) => {
      const path = join(folder, name);
      mkdirSync(join(path, '..'), { recursive: true });
      writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
      return path;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
