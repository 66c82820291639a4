/** Where names are written on the drawing. Positions in longitude and latitude. */

type Position = readonly number[];

/** Centre of gravity of a ring; the mean of its corners when it encloses nothing. */
function ringCentre(ring: readonly Position[]): [number, number] {
  const [lon0, lat0] = ring[0];
  let area = 0;
  let x = 0;
  let y = 0;
  for (let i = 0; i < ring.length; i++) {
    const [x0, y0] = [ring[i][0] - lon0, ring[i][1] - lat0];
    const next = ring[(i + 1) % ring.length];
    const [x1, y1] = [next[0] - lon0, next[1] - lat0];
    const cross = x0 * y1 - x1 * y0;
    area += cross;
    x += (x0 + x1) * cross;
    y += (y0 + y1) * cross;
  }
  if (Math.abs(area) < 1e-18) {
    const mean = (k: 0 | 1) => ring.reduce((sum, corner) => sum + corner[k], 0) / ring.length;
    return [mean(0), mean(1)];
  }
  return [lon0 + x / (3 * area), lat0 + y / (3 * area)];
}

/** Crossings of the ring's sides with the parallel of `lat`, from west to east. */
function crossings(ring: readonly Position[], lat: number): number[] {
  const found: number[] = [];
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [xi, yi] = ring[i];
    const [xj, yj] = ring[j];
    if (yi > lat !== yj > lat) found.push(((xj - xi) * (lat - yi)) / (yj - yi) + xi);
  }
  return found.sort((a, b) => a - b);
}

/** A place inside the ring: its centre of gravity, or the middle of the widest stretch at that latitude. */
export function placeInside(ring: readonly Position[]): [number, number] {
  const [lon, lat] = ringCentre(ring);
  const sides = crossings(ring, lat);
  let best: [number, number] = [lon, lat];
  let width = 0;
  for (let i = 0; i + 1 < sides.length; i += 2) {
    if (lon > sides[i] && lon < sides[i + 1]) return [lon, lat];
    if (sides[i + 1] - sides[i] > width) {
      width = sides[i + 1] - sides[i];
      best = [(sides[i] + sides[i + 1]) / 2, lat];
    }
  }
  return best;
}

/**
 * The middle of the long side that looks most to the north, and its direction as degrees clockwise from east (how
 * text along it is turned), for a name written along a boundary.
 */
export function northernSide(ring: readonly Position[]): { at: [number, number]; turnDeg: number } {
  const [cx, cy] = ringCentre(ring);
  const lonScale = Math.cos((cy * Math.PI) / 180);
  let best = { at: [cx, cy] as [number, number], turnDeg: 0 };
  let most = 0;
  for (let i = 0; i + 1 < ring.length; i++) {
    const [a, b] = ring[i][0] <= ring[i + 1][0] ? [ring[i], ring[i + 1]] : [ring[i + 1], ring[i]];
    const east = (b[0] - a[0]) * lonScale;
    const north = b[1] - a[1];
    const middle: [number, number] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const aboveCentre = middle[1] - cy;
    // Long, running east and west, with the ring below it.
    const worth = aboveCentre > 0 ? east * aboveCentre : 0;
    if (worth > most) {
      most = worth;
      best = { at: middle, turnDeg: (-Math.atan2(north, east) * 180) / Math.PI };
    }
  }
  return best;
}

/**
 * The middle of a line, and the direction of its side there as degrees clockwise from east, turned so that text along
 * it can be read upright.
 */
export function middleOfLine(line: readonly Position[]): { at: [number, number]; turnDeg: number } {
  const lonScale = Math.cos((line[0][1] * Math.PI) / 180);
  const side = (i: number) =>
    [(line[i + 1][0] - line[i][0]) * lonScale, line[i + 1][1] - line[i][1]] as const;
  const lengths = line.slice(1).map((_, i) => Math.hypot(...side(i)));
  let left = lengths.reduce((sum, length) => sum + length, 0) / 2;
  let i = 0;
  while (i < lengths.length - 1 && left > lengths[i]) left -= lengths[i++];
  const share = lengths[i] > 0 ? left / lengths[i] : 0;
  const along = (k: 0 | 1) => line[i][k] + share * (line[i + 1][k] - line[i][k]);
  const [east, north] = side(i);
  const turnDeg = (-Math.atan2(north, east) * 180) / Math.PI;
  return {
    at: [along(0), along(1)],
    turnDeg: turnDeg > 90 ? turnDeg - 180 : turnDeg < -90 ? turnDeg + 180 : turnDeg,
  };
}
