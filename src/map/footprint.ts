import type { LonLat } from '../geo/frame.ts';

type Ring = readonly LonLat[];

const signedArea = (ring: Ring): number => {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const [x0, y0] = ring[i];
    const [x1, y1] = ring[(i + 1) % ring.length];
    twice += x0 * y1 - x1 * y0;
  }
  return twice / 2;
};

const holds = (ring: Ring, [x, y]: LonLat): boolean => {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [xi, yi] = ring[i];
    const [xj, yj] = ring[j];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
};

const closed = (ring: Ring, clockwise: boolean): GeoJSON.Position[] => {
  const turned = signedArea(ring) < 0 === clockwise ? [...ring] : [...ring].reverse();
  const [first] = turned;
  const last = turned[turned.length - 1];
  if (first[0] !== last[0] || first[1] !== last[1]) turned.push(first);
  return turned.map(([lon, lat]) => [lon, lat]);
};

/**
 * Rings on the ground as an RFC 7946 geometry: a ring that lies wholly inside another is a hole in it, every other
 * ring is a piece of its own; rings are closed, outer ones run counter-clockwise. Null without a ring of three corners.
 */
export function footprintGeometry(rings: readonly Ring[]): GeoJSON.MultiPolygon | null {
  const usable = rings.filter((ring) => ring.length >= 3 && signedArea(ring) !== 0);
  const largestFirst = [...usable].sort((a, b) => Math.abs(signedArea(b)) - Math.abs(signedArea(a)));
  const pieces: { outer: Ring; holes: Ring[] }[] = [];
  for (const ring of largestFirst) {
    const around = pieces.find((piece) => ring.every((corner) => holds(piece.outer, corner)));
    if (around) around.holes.push(ring);
    else pieces.push({ outer: ring, holes: [] });
  }
  if (pieces.length === 0) return null;
  return {
    type: 'MultiPolygon',
    coordinates: pieces.map(({ outer, holes }) => [
      closed(outer, false),
      ...holes.map((hole) => closed(hole, true)),
    ]),
  };
}
