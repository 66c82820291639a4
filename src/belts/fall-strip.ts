/** The ground on which the trees of an edge could fall: as far from it as they are tall. */
import type { MultiPolygon, Polygon } from 'geojson';
import type { Frame } from '../geo/frame.ts';
import { type LocalXY, toLonLat } from '../geo/frame.ts';
import { areasTogether } from '../geo/polygon.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { GrowthMoment } from '../scene/options.ts';
import { beltOrBlockAtYear } from '../scene/stand-at-year.ts';
import { labelOf } from '../scene/things.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';
import { distanceToLineM, isInside, lineEnters, type XY } from '../site/plane-geometry.ts';
import type { BeltLike } from './belt-shape.ts';

export interface FallStrip {
  readonly heightM: number;
  /** Longitude and latitude. */
  readonly area: Polygon | MultiPolygon;
  /** Buildings, paths, lines and patches within reach. */
  readonly within: readonly string[];
}

const CIRCLE_CORNERS = 32;
const KINDS_IN_DANGER: readonly SiteFeature['properties']['kind'][] = [
  'building',
  'path',
  'service',
  'patch',
];

/** Null: it does not stand in that year. Trees stand anywhere in its width, and fall any way. */
export function fallStrip(
  document: SiteDocument,
  edge: BeltLike,
  frame: Frame,
  moment: GrowthMoment,
): FallStrip | null {
  const stand = beltOrBlockAtYear(document, edge, moment);
  if (!stand || !(stand.heightM > 0)) return null;
  const { geometry } = edge;
  const lines = (geometry.type === 'Polygon' ? geometry.coordinates : [geometry.coordinates]).map((line) =>
    ringToLocal(frame, line),
  );
  const reachM = stand.heightM + stand.widthM / 2;
  const area = roundAbout(lines, reachM, geometry.type === 'Polygon');
  if (!area) return null;
  const within = chosenFeatures(document, moment.layout)
    .filter(
      (other) =>
        KINDS_IN_DANGER.includes(other.properties.kind) &&
        reaches(lines, geometry.type === 'Polygon', reachM, other, frame),
    )
    .map((other) => labelOf(document, other));
  return { heightM: stand.heightM, area: toGround(area, frame), within };
}

/** All ground within a distance of lines, and inside them where they are rings; local metres. */
function roundAbout(
  lines: readonly (readonly XY[])[],
  reachM: number,
  filled: boolean,
): Polygon | MultiPolygon | null {
  const pieces: Polygon[] = [];
  for (const line of lines)
    for (let i = 1; i < line.length; i++) pieces.push(capsule(line[i - 1], line[i], reachM));
  if (filled) pieces.push({ type: 'Polygon', coordinates: [lines[0].map(([x, y]) => [x, y])] });
  return areasTogether(pieces);
}

function capsule(a: XY, b: XY, radiusM: number): Polygon {
  const along = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const half = (middle: XY, from: number) =>
    Array.from({ length: CIRCLE_CORNERS / 2 + 1 }, (_, i): [number, number] => {
      const turn = from + (2 * Math.PI * i) / CIRCLE_CORNERS;
      return [middle[0] + radiusM * Math.cos(turn), middle[1] + radiusM * Math.sin(turn)];
    });
  const ring = [...half(b, along - Math.PI / 2), ...half(a, along + Math.PI / 2)];
  return { type: 'Polygon', coordinates: [[...ring, ring[0]]] };
}

function reaches(
  lines: readonly (readonly XY[])[],
  filled: boolean,
  reachM: number,
  other: SiteFeature,
  frame: Frame,
): boolean {
  const { geometry } = other;
  const rings =
    geometry.type === 'Polygon'
      ? geometry.coordinates.map((ring) => ringToLocal(frame, ring))
      : geometry.type === 'LineString'
        ? [ringToLocal(frame, geometry.coordinates)]
        : [];
  const near = (from: readonly XY[], to: readonly XY[]) => from.some((p) => distanceToLineM(p, to) <= reachM);
  return rings.some((ring) =>
    lines.some(
      (line) =>
        near(ring, line) ||
        near(line, ring) ||
        (filled && ring.some((p) => isInside(p, lines))) ||
        (geometry.type === 'Polygon' && lineEnters(line, rings)),
    ),
  );
}

function toGround(area: Polygon | MultiPolygon, frame: Frame): Polygon | MultiPolygon {
  const ring = (points: readonly (readonly number[])[]) =>
    points.map(([x, y]): [number, number] => {
      const [lon, lat] = toLonLat(frame, [x, y] as LocalXY);
      return [lon, lat];
    });
  return area.type === 'Polygon'
    ? { type: 'Polygon', coordinates: area.coordinates.map(ring) }
    : { type: 'MultiPolygon', coordinates: area.coordinates.map((polygon) => polygon.map(ring)) };
}
