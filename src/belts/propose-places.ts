/** Where belts could stand on a field: along its sides, and across it square to the winds. Local metres. */
import type { LocalXY } from '../geo/frame.ts';
import { distanceToLineM, isInside } from '../site/plane-geometry.ts';
import { type MayStand, STAND_OFF_M } from './propose-no-go.ts';
import type { BeltPlace, BeltPlant } from './propose-types.ts';

/** A belt across the field leaves so much to its edges for a cart to pass. Common practice, no source. */
const HEADLAND_M = 5;
/** A side ends where the boundary turns by this much at a corner, or in all since the side began. */
const CORNER_DEG = 35;
const SIDE_TURN_DEG = 60;
/** Lines across the field: this far apart in heights of the tallest plant, and no more than so many. */
const ACROSS_H = 4;
const MOST_ACROSS = 6;
/** Shorter belts do little: ends let the wind round. Common practice, no source. */
const LEAST_LENGTH_M = 12;
const LEAST_LENGTH_H = 2;
/** A side at least so long is also tried in halves. */
const HALVED_FROM_M = 50;
const STEP_M = 1;
/** Slack against rounding where a line lies exactly at its clearance. */
const SLACK_M = 0.05;

interface Run {
  readonly where: BeltPlace['where'];
  readonly facingDeg: number;
  /** The line for a belt of some width. */
  readonly lineFor: (plant: BeltPlant) => readonly LocalXY[];
  readonly freeM: (plant: BeltPlant) => number;
}

/** Where a plant may stand on a field. */
export type PlacesFor = (plant: BeltPlant, mayStand: MayStand) => BeltPlace[];

/**
 * Places on a field, numbered alike for every plant.
 * @param rings outer first; @param fromRad grid azimuths of the winds that belts across the field shall meet square.
 */
export function fieldPlaces(
  rings: readonly (readonly LocalXY[])[],
  fromRad: readonly number[],
  tallestM: number,
): PlacesFor {
  const outer = tidyRing(rings[0]);
  const runs = [...sidesOf(outer), ...fromRad.flatMap((from) => linesAcross(outer, from, tallestM))];
  const around = rings.map(closed);
  return (plant, mayStand) => {
    const leastM = Math.max(LEAST_LENGTH_M, LEAST_LENGTH_H * plant.heightM);
    return runs.flatMap((run, number) => {
      const line = run.lineFor(plant);
      const clearM = run.freeM(plant) - SLACK_M;
      const free = (at: LocalXY): boolean =>
        isInside(at, around) &&
        around.every((ring) => distanceToLineM(at, ring) >= clearM) &&
        mayStand(at, plant);
      const lengthM = lengthOf(line);
      return freeStretches(line, free)
        .flatMap(([fromM, toM]) => parts(fromM, toM))
        .filter(([fromM, toM]) => toM - fromM >= leastM)
        .map(
          ([fromM, toM]): BeltPlace => ({
            line: cutOut(line, fromM, toM),
            lengthM: toM - fromM,
            facingDeg: run.facingDeg,
            where: run.where,
            run: number,
            from: fromM / lengthM,
            to: toM / lengthM,
          }),
        );
    });
  };
}

function parts(fromM: number, toM: number): [number, number][] {
  const middleM = (fromM + toM) / 2;
  if (toM - fromM < HALVED_FROM_M) return [[fromM, toM]];
  return [
    [fromM, toM],
    [fromM, middleM],
    [middleM, toM],
  ];
}

const closed = (ring: readonly LocalXY[]): readonly LocalXY[] => {
  const [first, last] = [ring[0], ring[ring.length - 1]];
  return first[0] === last[0] && first[1] === last[1] ? ring : [...ring, first];
};

/** Counter-clockwise, each corner once. */
function tidyRing(ring: readonly LocalXY[]): LocalXY[] {
  const once = ring.filter((p, i) => {
    const q = ring[(i + 1) % ring.length];
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 0.01;
  });
  let twiceArea = 0;
  once.forEach((p, i) => {
    const q = once[(i + 1) % once.length];
    twiceArea += p[0] * q[1] - q[0] * p[1];
  });
  return twiceArea < 0 ? once.reverse() : once;
}

const headingDeg = (a: LocalXY, b: LocalXY): number => (Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI;
const turnDeg = (from: number, to: number): number => ((((to - from) % 360) + 540) % 360) - 180;

/** The sides between corners; each vertex is moved inward along its mitre. */
function sidesOf(ring: readonly LocalXY[]): Run[] {
  const count = ring.length;
  const at = (i: number) => ring[((i % count) + count) % count];
  const heading = (i: number) => headingDeg(at(i), at(i + 1));
  const turns = ring.map((_, i) => turnDeg(heading(i - 1), heading(i)));
  const sharpest = turns.reduce((best, turn, i) => (Math.abs(turn) > Math.abs(turns[best]) ? i : best), 0);
  const sides: number[][] = [];
  let side = [sharpest];
  let turnedDeg = 0;
  for (let step = 1; step <= count; step++) {
    const i = (sharpest + step) % count;
    side.push(i);
    turnedDeg += turns[i];
    if (step === count || Math.abs(turns[i]) >= CORNER_DEG || Math.abs(turnedDeg) >= SIDE_TURN_DEG) {
      sides.push(side);
      side = [i];
      turnedDeg = 0;
    }
  }
  const inward = (i: number, byM: number): LocalXY => {
    const [a, b, c] = [at(i - 1), at(i), at(i + 1)];
    const [n1, n2] = [leftOf(a, b), leftOf(b, c)];
    const scale = byM / Math.max(0.3, 1 + n1[0] * n2[0] + n1[1] * n2[1]);
    return [b[0] + (n1[0] + n2[0]) * scale, b[1] + (n1[1] + n2[1]) * scale];
  };
  const freeM = (plant: BeltPlant) => plant.widthM / 2 + STAND_OFF_M;
  return sides.map(
    (vertices): Run => ({
      where: 'edge',
      // Counter-clockwise: the outside lies to the right.
      facingDeg: (headingDeg(at(vertices[0]), at(vertices[vertices.length - 1])) + 90 + 360) % 360,
      freeM,
      lineFor: (plant) => vertices.map((i) => inward(i, freeM(plant))),
    }),
  );
}

/** Unit vector to the left of a way. */
function leftOf(a: LocalXY, b: LocalXY): readonly [number, number] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
}

function linesAcross(ring: readonly LocalXY[], fromRad: number, tallestM: number): Run[] {
  const [upX, upY] = [Math.sin(fromRad), Math.cos(fromRad)];
  const along = ring.map(([x, y]) => -(x * upX + y * upY));
  const across = ring.map(([x, y]) => x * upY - y * upX);
  const [t0, t1] = [Math.min(...along), Math.max(...along)];
  const [s0, s1] = [Math.min(...across), Math.max(...across)];
  const count = Math.min(MOST_ACROSS, Math.floor((t1 - t0) / (ACROSS_H * tallestM)));
  return Array.from({ length: count }, (_, k): Run => {
    const t = t0 + ((k + 1) * (t1 - t0)) / (count + 1);
    const end = (s: number): LocalXY => [-t * upX + s * upY, -t * upY - s * upX];
    return {
      where: 'across',
      facingDeg: ((fromRad * 180) / Math.PI + 360) % 360,
      freeM: (plant) => plant.widthM / 2 + HEADLAND_M,
      lineFor: () => [end(s0), end(s1)],
    };
  });
}

const lengthOf = (line: readonly LocalXY[]): number =>
  line.reduce(
    (sum, p, i) => (i === 0 ? 0 : sum + Math.hypot(p[0] - line[i - 1][0], p[1] - line[i - 1][1])),
    0,
  );

function pointAt(line: readonly LocalXY[], metres: number): LocalXY {
  let left = metres;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= length || i === line.length - 1) {
      const q = length > 0 ? Math.min(1, left / length) : 0;
      return [a[0] + q * (b[0] - a[0]), a[1] + q * (b[1] - a[1])];
    }
    left -= length;
  }
  return line[0];
}

/** First and last metre of each stretch of a line that is free, sampled by the metre. */
function freeStretches(line: readonly LocalXY[], free: (at: LocalXY) => boolean): [number, number][] {
  const lengthM = lengthOf(line);
  const steps = Math.max(1, Math.ceil(lengthM / STEP_M));
  const found: [number, number][] = [];
  let begun: number | null = null;
  for (let i = 0; i <= steps; i++) {
    const metres = (lengthM * i) / steps;
    const stands = free(pointAt(line, metres));
    if (stands) begun ??= metres;
    else if (begun !== null) {
      found.push([begun, (lengthM * (i - 1)) / steps]);
      begun = null;
    }
  }
  if (begun !== null) found.push([begun, lengthM]);
  return found;
}

/** A stretch of a line with the vertices between. */
function cutOut(line: readonly LocalXY[], fromM: number, toM: number): LocalXY[] {
  const cut: LocalXY[] = [pointAt(line, fromM)];
  let metres = 0;
  for (let i = 1; i < line.length - 1; i++) {
    metres += Math.hypot(line[i][0] - line[i - 1][0], line[i][1] - line[i - 1][1]);
    if (metres > fromM + STEP_M / 2 && metres < toM - STEP_M / 2) cut.push(line[i]);
  }
  cut.push(pointAt(line, toM));
  return cut;
}
