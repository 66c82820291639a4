import type { Barrier } from '../../src/crowns/barrier.ts';
import type { Relief } from '../../src/wind/relief.ts';
import type { ClimateSector, ShelterRequest, ShelterResult } from '../../src/wind/shelter-types.ts';
import { between, connected, type Part, partsOf, withSmallGapsClosed } from './shelter-parts.ts';
import { shareAmongTrees, type Tree, treesOf } from './shelter-trees.ts';

/**
 * The plain, slow shelter model: every cell, every direction, every leaf state, every segment, with a ray cast upwind
 * and downwind from the cell. Written from the published equations and the stated guesses, sharing nothing with the
 * engine but its types. Distances in metres, angles in radians clockwise from grid north.
 */
const SECTORED = [8, 12, 16, 36];

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
