import type { LonLat } from '../../geo/frame.ts';
import type { FeatureId, SiteFeature } from '../../site/document.ts';
import type { AppState } from '../../state/model.ts';
import { inLayout } from '../plan-features.ts';

type Ring = readonly (readonly number[])[];
type Near = { readonly feature: SiteFeature; readonly rank: number; readonly size: number };

const METRES_A_DEGREE = 111_320;

/** A flat local plane around a place: metres east and north of it. Good to a millimetre on a hundred metres. */
function planeAround([lon0, lat0]: LonLat): (position: readonly number[]) => [number, number] {
  const lonM = METRES_A_DEGREE * Math.cos((lat0 * Math.PI) / 180);
  return ([lon, lat]) => [(lon - lon0) * lonM, (lat - lat0) * METRES_A_DEGREE];
}

/** Distance from the origin to a line, metres. */
function distanceToLine(line: readonly (readonly [number, number])[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < line.length; i++) {
    const [ax, ay] = line[i];
    const dx = line[i + 1][0] - ax;
    const dy = line[i + 1][1] - ay;
    const t = Math.min(1, Math.max(0, -(ax * dx + ay * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(ax + t * dx, ay + t * dy));
  }
  return least;
}

/** Whether the origin lies inside rings taken together by the even-odd rule. */
function insideRings(rings: readonly (readonly (readonly [number, number])[])[]): boolean {
  let inside = false;
  for (const ring of rings)
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [xi, yi] = ring[i];
      const [xj, yj] = ring[j];
      if (yi > 0 !== yj > 0 && 0 < ((xj - xi) * -yi) / (yj - yi) + xi) inside = !inside;
    }
  return inside;
}

function areaOf(ring: readonly (readonly [number, number])[]): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++)
    twice += ring[j][0] * ring[i][1] - ring[i][0] * ring[j][1];
  return Math.abs(twice) / 2;
}

/** Lower is in front: what is small and drawn on top wins. */
const FRONT: Record<SiteFeature['properties']['kind'], number> = {
  tree: 0,
  measure: 1,
  planting: 2,
  wall: 3,
  building: 4,
  service: 5,
  path: 6,
  patch: 7,
  belt: 8,
  block: 9,
  keepOut: 10,
  field: 11,
};

/**
 * The feature a person means by pointing at a place: trees before patches before fields; of two alike the smaller.
 * @param reachM how far off a point or a line still counts, metres
 */
export function pickAt(
  state: Pick<AppState, 'document' | 'grown' | 'layout'>,
  place: LonLat,
  reachM: number,
): FeatureId | null {
  const flat = planeAround(place);
  const grown = new Map(state.grown.things.map((thing) => [thing.id, thing]));
  const near: Near[] = [];
  for (const feature of state.document.features) {
    if (!inLayout(feature, state.layout)) continue;
    const rank = FRONT[feature.properties.kind];
    const { geometry } = feature;
    const thing = grown.get(feature.id);
    if (geometry.type === 'Point') {
      const offM = Math.hypot(...flat(geometry.coordinates));
      const crownM = feature.properties.kind === 'tree' ? (thing?.radiusM ?? 0) : 0;
      // A stem that is hit beats a crown that merely covers the place.
      if (offM <= reachM) near.push({ feature, rank: rank - 0.5, size: offM });
      else if (offM <= crownM) near.push({ feature, rank, size: offM / crownM });
      continue;
    }
    if (geometry.type === 'LineString') {
      const offM = distanceToLine(geometry.coordinates.map(flat));
      const covered = thing?.footprint.some((ring) => insideRings([(ring as Ring).map(flat)])) ?? false;
      if (offM <= reachM || covered) near.push({ feature, rank, size: offM });
      continue;
    }
    const rings = geometry.coordinates.map((ring) => ring.map(flat));
    if (insideRings(rings) || distanceToLine(rings[0]) <= reachM / 2)
      near.push({ feature, rank, size: areaOf(rings[0]) });
  }
  near.sort((a, b) => a.rank - b.rank || a.size - b.size);
  return near[0]?.feature.id ?? null;
}
