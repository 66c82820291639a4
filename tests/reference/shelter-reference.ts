import type { Barrier } from '../../src/crowns/barrier.ts';
import type { Relief } from '../../src/wind/relief.ts';
import type { ClimateSector, ShelterRequest, ShelterResult } from '../../src/wind/shelter-types.ts';

/**
 * The plain, slow shelter model: every cell, every direction, every leaf state, every segment, with a ray cast upwind
 * and downwind from the cell. Written from the published equations and the stated guesses, sharing nothing with the
 * engine but its types. Distances in metres, angles in radians clockwise from grid north.
 */
const SECTORED = [8, 12, 16, 36];

interface Part {
  readonly barrier: Barrier;
  readonly points: readonly (readonly [number, number])[];
  readonly heights: readonly number[];
  readonly outline: readonly (readonly [number, number])[];
}

function weps(p: number, x: number, w: number): number {
  if (x <= -5 || x > 35) return 1;
  if (p > 0.9) return 1 - ((1 - weps(0.9, x, w)) * (1 - p)) / 0.1;
  const pb = p + 0.3 * (1 - p) * (1 - Math.exp(-0.5 * w));
  const a = 0.008 - 0.17 * pb + 0.17 * pb ** 1.05;
  const b = 1.35 * Math.exp(-0.5 * pb ** 0.2);
  const c = 10 * (1 - 0.5 * pb);
  const d = 3 - pb;
  return Math.min(1, 1 - Math.exp(-a * x ** 2) + b * Math.exp(-0.003 * (x + c) ** d));
}

/** Gamma function by Stirling's series after shifting the argument up. */
function gammaOf(x: number): number {
  let shift = 1;
  let z = x;
  while (z < 12) {
    shift *= z;
    z += 1;
  }
  const series = 1 / (12 * z) - 1 / (360 * z ** 3) + 1 / (1260 * z ** 5);
  return Math.exp((z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series) / shift;
}

const between = (a: number, b: number, q: number): number => a + q * (b - a);

function distanceToEdge(
  p: readonly [number, number],
  a: readonly [number, number],
  b: readonly [number, number],
) {
  const [vx, vy] = [b[0] - a[0], b[1] - a[1]];
  const square = vx * vx + vy * vy;
  const q = square === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * vx + (p[1] - a[1]) * vy) / square));
  const foot: readonly [number, number] = [a[0] + q * vx, a[1] + q * vy];
  return { foot, distance: Math.hypot(p[0] - foot[0], p[1] - foot[1]) };
}

function contains(ring: readonly (readonly [number, number])[], p: readonly [number, number]): boolean {
  let crossings = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    if (a[1] > p[1] === b[1] > p[1]) return;
    if (a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]) > p[0]) crossings++;
  });
  return crossings % 2 === 1;
}

/** Distance between two outlines, 0 where they overlap. */
function gapBetween(a: Part['outline'], b: Part['outline']): number {
  if (a.some((p) => contains(b, p)) || b.some((p) => contains(a, p))) return 0;
  let least = Number.POSITIVE_INFINITY;
  const steps = 400;
  a.forEach((from, i) => {
    const to = a[(i + 1) % a.length];
    for (let k = 0; k <= steps; k++) {
      const p: readonly [number, number] = [
        between(from[0], to[0], k / steps),
        between(from[1], to[1], k / steps),
      ];
      if (contains(b, p)) least = 0;
      b.forEach((c, j) => {
        least = Math.min(least, distanceToEdge(p, c, b[(j + 1) % b.length]).distance);
      });
    }
  });
  return least;
}

function partOf(barrier: Barrier, points: Part['points'], heights: readonly number[]): Part {
  if (barrier.shape === 'area') return { barrier, points, heights, outline: points };
  const [[x1, y1], [x2, y2]] = points;
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const half = barrier.widthM / 2;
  const px = ((y2 - y1) / length) * half;
  const py = (-(x2 - x1) / length) * half;
  return {
    barrier,
    points,
    heights,
    outline: [
      [x1 + px, y1 + py],
      [x2 + px, y2 + py],
      [x2 - px, y2 - py],
      [x1 - px, y1 - py],
    ],
  };
}

function partsOf(barriers: readonly Barrier[]): Part[] {
  const parts: Part[] = [];
  for (const barrier of barriers) {
    const points = Array.from(
      barrier.heightM,
      (_, i) => [barrier.xyM[2 * i], barrier.xyM[2 * i + 1]] as const,
    );
    const heights = [...barrier.heightM];
    if (barrier.shape === 'area') parts.push(partOf(barrier, points, heights));
    else {
      for (let i = 0; i + 1 < points.length; i++) {
        parts.push(partOf(barrier, [points[i], points[i + 1]], [heights[i], heights[i + 1]]));
      }
    }
  }
  return parts;
}

const alike = (a: readonly number[], b: readonly number[]): boolean =>
  Math.max(...a) * 2 >= Math.min(...b) && Math.max(...b) * 2 >= Math.min(...a);

/** Carries lines that stop within half a metre of another thing on to it. */
function withSmallGapsClosed(parts: readonly Part[], barriers: readonly Barrier[]): Part[] {
  const added: Part[] = [];
  for (const barrier of barriers) {
    if (barrier.shape !== 'line') continue;
    for (const i of [0, barrier.heightM.length - 1]) {
      const end = [barrier.xyM[2 * i], barrier.xyM[2 * i + 1]] as const;
      const height = barrier.heightM[i];
      for (const other of parts) {
        if (other.barrier === barrier || !alike([height], other.heights)) continue;
        const inside = contains(other.outline, end);
        const edges = other.outline.map((a, j) =>
          distanceToEdge(end, a, other.outline[(j + 1) % other.outline.length]),
        );
        const gap = inside ? 0 : Math.min(...edges.map((edge) => edge.distance));
        if (gap > 0.5 || (gap === 0 && other.barrier.shape === 'area')) continue;
        const closed = other.barrier.shape === 'area';
        const feet = other.points.flatMap((a, j) =>
          closed || j + 1 < other.points.length
            ? [distanceToEdge(end, a, other.points[(j + 1) % other.points.length])]
            : [],
        );
        const nearest = feet.reduce((best, foot) => (foot.distance < best.distance ? foot : best));
        if (nearest.distance > 1e-6) added.push(partOf(barrier, [end, nearest.foot], [height, height]));
      }
    }
  }
  return [...parts, ...added];
}

/** Parts that touch, each part with all it is connected to. */
function connected(parts: readonly Part[]): (readonly Part[])[] {
  const meets = parts.map((a) =>
    parts.map((b) => a !== b && alike(a.heights, b.heights) && gapBetween(a.outline, b.outline) <= 0.5),
  );
  const seen = new Set<number>();
  const groups: Part[][] = [];
  parts.forEach((_, start) => {
    if (seen.has(start)) return;
    const group: Part[] = [];
    const queue = [start];
    seen.add(start);
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      group.push(parts[at]);
      for (let next = 0; next < parts.length; next++) {
        if (!meets[at][next] || seen.has(next)) continue;
        seen.add(next);
        queue.push(next);
      }
    }
    groups.push(group);
  });
  return groups;
}

interface Sample {
  readonly fromGridRad: number;
  readonly frequency: number;
  readonly sector: ClimateSector;
}
function samplesOf(sectors: readonly ClimateSector[], convergenceRad: number): Sample[] {
  const wide = SECTORED.includes(sectors.length);
  return sectors.flatMap((sector) => {
    const offsets = wide ? [-2, -1, 0, 1, 2].map((step) => (step * 360) / sectors.length / 5) : [0];
    return offsets.map((offset) => ({
      fromGridRad: ((sector.fromDeg + offset) * Math.PI) / 180 - convergenceRad,
      frequency: sector.frequency / offsets.length,
      sector,
    }));
  });
}

interface Tree {
  readonly at: readonly [number, number];
  readonly top: number;
  /** Silhouette, and what of it is closed in full leaf and leafless, m2. */
  readonly outline: number;
  readonly on: number;
  readonly off: number;
  readonly leafClass: number;
}

/** Silhouettes from the side, summed in small squares; of a tree over a barrier what rises above it. */
function treesOf({ scene, options, readingHeightM }: ShelterRequest, standing: readonly Barrier[]): Tree[] {
  const { crowns } = scene;
  const footprints = partsOf(standing).filter(
    ({ barrier }) => barrier.shape === 'area' || barrier.widthM > 0,
  );
  return Array.from({ length: crowns.count }, (_, i): Tree => {
    const [x, y, , base, top, radius, depthOn, depthOff] = crowns.values.subarray(8 * i, 8 * i + 8);
    const form = ['ellipsoid', 'dome', 'cone', 'cylinder'][crowns.form[i]];
    const covered = footprints
      .filter(({ outline }) => contains(outline, [x, y]))
      .reduce((most, { heights }) => Math.max(most, ...heights), 0);
    const young =
      options.youngBelts && readingHeightM > 0
        ? Math.min(1, Math.max(0, (top - readingHeightM) / readingHeightM))
        : 1;
    const sum = { outline: 0, on: 0, off: 0 };
    const steps = 200;
    const from = Math.max(base, covered);
    for (let j = 0; j < steps && from < top; j++) {
      const level = (between(from, top, (j + 0.5) / steps) - base) / (top - base);
      const round = { ellipsoid: 1 - (2 * level - 1) ** 2, dome: 1 - level ** 2, cone: (1 - level) ** 2 };
      const r = radius * Math.sqrt(round[form as keyof typeof round] ?? 1);
      for (let k = 0; k < steps; k++) {
        const area = (((top - from) / steps) * 2 * r) / steps;
        const chord = 2 * r * Math.sqrt(1 - ((2 * (k + 0.5)) / steps - 1) ** 2);
        sum.outline += young * area;
        sum.on += young * area * (1 - Math.exp(-depthOn * chord));
        sum.off += young * area * (1 - Math.exp(-depthOff * chord));
      }
    }
    return { at: [x, y], top, leafClass: crowns.leafClass[i], ...sum };
  }).filter(({ outline }) => outline > 0);
}

/** What is left of the wind on the ground at a roughness density: Raupach 1992 and 1994, lengths in tree heights. */
function raupach(density: number): number {
  const lambda = Math.min(0.5, density);
  const roughness = (l: number) => {
    const root = Math.sqrt(7.5 * 2 * l);
    const d = l > 0 ? 1 - (1 - Math.exp(-root)) / root : 0;
    const frictionOverSpeed = Math.min(0.3, Math.sqrt(0.003 + 0.3 * l));
    return { d, z0: (1 - d) * Math.exp(-0.4 / frictionOverSpeed + 0.193) };
  };
  const { d, z0 } = roughness(lambda);
  const rise = Math.log(10 / roughness(0).z0) / Math.log((10 - d) / z0);
  return Math.min(1, rise / Math.sqrt(1 + 100 * lambda));
}

/** Trees laid on nodes two mean heights apart along the wind, averaged over twenty heights upwind, read between nodes. */
function shareAmongTrees(
  trees: readonly Tree[],
  at: readonly [number, number],
  up: readonly number[],
  leafShareOfClass: (leafClass: number) => number,
): number {
  if (trees.length === 0) return 1;
  const place = (p: readonly [number, number]) => [
    p[0] * up[1] - p[1] * up[0],
    -(p[0] * up[0] + p[1] * up[1]),
  ];
  const weight = trees.reduce((sum, tree) => sum + tree.outline, 0);
  const mean = (of: (tree: Tree) => number) =>
    trees.reduce((sum, tree) => sum + tree.outline * of(tree), 0) / weight;
  const places = trees.map((tree) => place(tree.at));
  const extent = [0, 1].map((axis) => {
    const all = places.map((p) => p[axis]);
    return Math.max(...all) - Math.min(...all);
  });
  const cell = Math.max(2 * mean(({ top }) => top), Math.max(...extent) / 96);
  const middle = place([mean((tree) => tree.at[0]), mean((tree) => tree.at[1])]);
  /** A square of one cell folded with itself twice. */
  const spline = (distance: number) => {
    const d = Math.abs(distance);
    return d < 0.5 ? 0.75 - d * d : 0.5 * (1.5 - d) ** 2;
  };
  const tent = (distance: number) => Math.max(0, 1 - Math.abs(distance));
  const densityAt = (column: number, row: number): number =>
    trees.reduce((sum, tree, i) => {
      const s = (places[i][0] - middle[0]) / cell - column;
      const t = (places[i][1] - middle[1]) / cell - row;
      if (Math.abs(s) >= 1.5 || Math.abs(t) >= 1.5) return sum;
      const leaf = leafShareOfClass(tree.leafClass);
      const open = (closed: number) => Math.max(0.01, 1 - closed / tree.outline);
      const mixed = open(tree.on) ** leaf * open(tree.off) ** (1 - leaf);
      return sum + (spline(s) * spline(t) * tree.outline * (1 - mixed)) / cell ** 2;
    }, 0);
  const deficitAt = (column: number, row: number): number => {
    let sum = 0;
    for (let m = 0; m < 10; m++) sum += (1 - m / 10) * densityAt(column, row - m);
    return 1 - raupach(sum / 5.5);
  };
  const here = place(at);
  const [column, row] = [(here[0] - middle[0]) / cell, (here[1] - middle[1]) / cell];
  const [c, r] = [Math.floor(column), Math.floor(row)];
  let deficit = 0;
  for (const i of [c, c + 1])
    for (const j of [r, r + 1]) {
      const share = tent(column - i) * tent(row - j);
      if (share > 0) deficit += share * deficitAt(i, j);
    }
  return 1 - deficit;
}

/** What the shape of the land makes of a wind, from its coefficients at the nearest four cells. */
function landShare(relief: Relief, at: readonly [number, number], up: readonly number[]): number {
  const column = (at[0] - relief.westM) / relief.cellM - 0.5;
  const row = (relief.northM - at[1]) / relief.cellM - 0.5;
  const [c, r] = [Math.floor(column), Math.floor(row)];
  const [u, v] = [column - c, row - r];
  const read = (values: Float32Array) => {
    const value = (i: number, j: number) => values[j * relief.columns + i];
    return between(
      between(value(c, r), value(c + 1, r), u),
      between(value(c, r + 1), value(c + 1, r + 1), u),
      v,
    );
  };
  const change =
    up[0] ** 2 * read(relief.eastEast) +
    2 * up[0] * up[1] * read(relief.eastNorth) +
    up[1] ** 2 * read(relief.northNorth);
  return Math.min(1.6, Math.max(0.5, 1 + change));
}

/** Share of open wind at one place for one wind and one leaf state. */
function shareAt(
  request: ShelterRequest,
  groups: readonly (readonly Part[])[],
  trees: readonly Tree[],
  at: readonly [number, number],
  fromGridRad: number,
  leafShareOfClass: (leafClass: number) => number,
): number {
  const leafShareOf = (barrier: Barrier) => leafShareOfClass(barrier.leafClass);
  const { options, readingHeightM } = request;
  const up = [Math.sin(fromGridRad), Math.cos(fromGridRad)];
  const right = [up[1], -up[0]];
  const along = (p: readonly [number, number]) => -(p[0] * up[0] + p[1] * up[1]);
  const across = (p: readonly [number, number]) => p[0] * right[0] + p[1] * right[1];

  const cosineOf = (part: Part) => {
    if (part.barrier.shape === 'area' || !options.obliqueWind) return 1;
    const [a, b] = part.points;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return Math.min(1, Math.max(0.25, Math.abs(across(b) - across(a)) / length));
  };
  const porosityOf = (part: Part, height: number) => {
    const { porosityOn, porosityOff, baseM } = part.barrier;
    const s = leafShareOf(part.barrier);
    let p = s >= 1 ? porosityOn : porosityOff;
    if (s > 0 && s < 1 && porosityOn !== porosityOff) {
      p = Math.exp(
        s * Math.log(Math.max(0.01, porosityOn)) + (1 - s) * Math.log(Math.max(0.01, porosityOff)),
      );
    }
    p = p ** (1 / cosineOf(part));
    return p + (1 - p) * (options.raisedFeet ? Math.min(1, baseM / height) : 0);
  };
  const youngOf = (height: number) =>
    options.youngBelts && readingHeightM > 0
      ? Math.min(1, Math.max(0, (height - readingHeightM) / readingHeightM))
      : 1;

  /** Beside a line that the wind blows along: half of what it takes straight on, to four heights. */
  const besideShare = (part: Part): number => {
    const [a, b] = part.points;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const q = ((at[0] - a[0]) * (b[0] - a[0]) + (at[1] - a[1]) * (b[1] - a[1])) / length ** 2;
    const cellAlongHere = along(at);
    const ends = [along(a), along(b)];
    if (q < 0 || q > 1 || cellAlongHere < Math.min(...ends) || cellAlongHere > Math.max(...ends)) return 1;
    const foot = [between(a[0], b[0], q), between(a[1], b[1], q)];
    const aside = Math.hypot(at[0] - foot[0], at[1] - foot[1]) / between(part.heights[0], part.heights[1], q);
    const mean = (part.heights[0] + part.heights[1]) / 2;
    const straight = { ...part, barrier: { ...part.barrier, shape: 'area' as const } };
    const f = weps(porosityOf(straight, mean), 0, part.barrier.widthM / mean);
    const parallel = Math.max(0, 1 - Math.abs(across(b) - across(a)) / length / 0.25);
    return 1 - 0.5 * parallel * Math.max(0, 1 - aside / 4) * (1 - f) * youngOf(mean);
  };
  const several = (a: number, b: number) => (options.chainedBelts ? a * b : Math.min(a, b));
  const cellAlong = along(at);
  const cellAcross = across(at);
  const shareOf = new Map<Barrier, number>();
  for (const group of groups) {
    const acrosses = group.flatMap((part) => part.points.map(across));
    const length = Math.max(...acrosses) - Math.min(...acrosses);
    const short = (d: number) =>
      options.shortThings && d !== 0 ? Math.min(1, (1.4 * length) / Math.abs(d)) : 1;
    for (const part of group) {
      const lower = (share: number) =>
        shareOf.set(part.barrier, Math.min(shareOf.get(part.barrier) ?? 1, share));
      const cut = (height: number, distance: number, width: number) => {
        const f = weps(porosityOf(part, height), distance / height, width / height);
        return (1 - f) * youngOf(height) * short(distance);
      };
      const crossings: { along: number; height: number }[] = [];
      const edgeCount = part.barrier.shape === 'area' ? part.points.length : 1;
      for (let i = 0; i < edgeCount; i++) {
        const j = (i + 1) % part.points.length;
        const [a, b] = [across(part.points[i]), across(part.points[j])];
        if (Math.abs(a - b) < 1e-9) continue;
        const q = (cellAcross - a) / (b - a);
        const half = part.barrier.shape === 'area' && a > cellAcross === b > cellAcross;
        if (q < -1e-9 || q > 1 + 1e-9 || half) continue;
        crossings.push({
          along: between(along(part.points[i]), along(part.points[j]), q),
          height: between(part.heights[i], part.heights[j], q),
        });
      }
      crossings.sort((a, b) => a.along - b.along);
      if (part.barrier.shape === 'line') {
        if (options.parallelWind) lower(besideShare(part));
        for (const crossing of crossings) {
          lower(1 - cut(crossing.height, cellAlong - crossing.along, part.barrier.widthM / cosineOf(part)));
        }
        continue;
      }
      for (let k = 0; k + 1 < crossings.length; k += 2) {
        const [entry, exit] = [crossings[k], crossings[k + 1]];
        const width = exit.along - entry.along;
        if (cellAlong <= entry.along) lower(1 - cut(entry.height, cellAlong - entry.along, width));
        else if (cellAlong >= exit.along) lower(1 - cut(exit.height, cellAlong - exit.along, width));
        else {
          const fromEntry = cellAlong - entry.along;
          const fromExit = exit.along - cellAlong;
          const height = fromEntry < fromExit ? entry.height : exit.height;
          const p = porosityOf(part, height);
          let quietest = 1;
          for (let x = 0; x <= 35; x += 0.05) quietest = Math.min(quietest, weps(p, x, width / height));
          const edge = weps(p, 0, width / height);
          const f = options.insideWoods
            ? quietest + (edge - quietest) * Math.exp(-Math.min(fromEntry, fromExit) / height)
            : edge;
          lower(1 - (1 - f) * youngOf(height));
        }
      }
    }
  }
  const whole = [...shareOf.values()].reduce(several, 1);
  const share = several(whole, shareAmongTrees(trees, at, up, leafShareOfClass));
  const ofLand = options.landform && request.scene.relief ? landShare(request.scene.relief, at, up) : 1;
  if (share < 1 - 0.002 || !options.endsAndGaps) return share * ofLand;

  let gain = 0;
  for (const group of groups) {
    const corners = group.flatMap((part) =>
      part.points.map((point, i) => ({
        part,
        height: part.heights[i],
        along: along(point),
        across: across(point),
      })),
    );
    const least = Math.min(...corners.map((corner) => corner.across));
    const greatest = Math.max(...corners.map((corner) => corner.across));
    for (const [edge, side] of [
      [least, -1],
      [greatest, 1],
    ]) {
      const outermost = corners.filter((corner) => Math.abs(corner.across - edge) < 1e-6);
      const end = outermost.reduce((best, corner) => (corner.along < best.along - 1e-6 ? corner : best));
      const aside = (cellAcross - edge) * side;
      const x = (cellAlong - end.along) / end.height;
      if (aside <= 0 || aside >= 2 * end.height || x <= -2 || x >= 5) continue;
      const strength =
        (1 - porosityOf(end.part, end.height)) *
        youngOf(end.height) *
        (options.shortThings ? Math.min(1, (greatest - least) / end.height) : 1);
      const fade = (1 - aside / (2 * end.height)) * (x < 0 ? 1 + x / 2 : 1 - x / 5);
      gain = Math.max(gain, 0.2 * strength * fade);
    }
  }
  return (gain > 0 ? 1 + gain : share) * ofLand;
}

export function referenceShelter(request: ShelterRequest): ShelterResult {
  const { scene, grid, options, readingHeightM } = request;
  const standing = scene.barriers.filter(
    (barrier) =>
      Math.min(barrier.porosityOn, barrier.porosityOff) < 1 &&
      Math.max(...barrier.heightM) > (options.youngBelts ? readingHeightM : 0),
  );
  const groups = connected(withSmallGapsClosed(partsOf(standing), standing));
  const trees = options.scatteredTrees ? treesOf(request, standing) : [];
  const cells = grid.columns * grid.rows;
  const windShare = new Float32Array(3 * cells);
  const galeHours = new Float32Array(3 * cells);
  const to10m = Math.log(10 / 0.03) / Math.log(scene.climate.heightM / 0.03);
  const seasons = [
    { sectors: scene.climate.growing.sectors, growing: 1 },
    { sectors: scene.climate.rest.sectors, growing: 0 },
  ];
  for (let cell = 0; cell < cells; cell++) {
    const at = [
      grid.westM + ((cell % grid.columns) + 0.5) * grid.cellM,
      grid.northM - (Math.floor(cell / grid.columns) + 0.5) * grid.cellM,
    ] as const;
    let run = 0;
    let openRun = 0;
    seasons.forEach(({ sectors, growing }, band) => {
      const days = [...scene.growingDay].filter((flag) => flag === growing).length;
      const daysOfPhase = new Array(scene.leaf.phaseCount).fill(0);
      scene.growingDay.forEach((flag, day) => {
        if (flag === growing) daysOfPhase[scene.leaf.phaseOfDay[day]]++;
      });
      let speed = 0;
      let openSpeed = 0;
      let gale = 0;
      for (const { fromGridRad, frequency, sector } of samplesOf(sectors, scene.convergenceRad)) {
        openSpeed += frequency * sector.meanSpeedMps;
        const scale = (sector.meanSpeedMps * to10m) / gammaOf(1 + 1 / sector.weibullK);
        daysOfPhase.forEach((phaseDays, phase) => {
          if (phaseDays === 0) return;
          const leafShareOf = (leafClass: number) =>
            scene.leaf.leafShare[phase * scene.leaf.classCount + leafClass];
          const share = shareAt(request, groups, trees, at, fromGridRad, leafShareOf);
          speed += (frequency * sector.meanSpeedMps * share * phaseDays) / days;
          gale +=
            frequency * Math.exp(-((request.galeMps / (share * scale)) ** sector.weibullK)) * phaseDays * 24;
        });
      }
      windShare[band * cells + cell] = speed / openSpeed;
      galeHours[band * cells + cell] = gale;
      galeHours[2 * cells + cell] += gale;
      run += speed * days;
      openRun += openSpeed * days;
    });
    windShare[2 * cells + cell] = run / openRun;
  }
  return { grid, windShare, galeHours, directions: 0 };
}
