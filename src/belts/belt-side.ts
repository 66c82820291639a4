/** From which winds a belt can shelter a field, and how much of the site's wind they are. */
import { type Frame, type LocalXY, toLocal } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import { isInside, type XY } from '../site/plane-geometry.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { degToRad, radToDeg } from '../units/angle.ts';
import type { ClimateSector, WindClimate } from '../wind/shelter-types.ts';
import type { BeltShape } from './belt-shape.ts';

/** Ground farther than this behind a belt is hardly sheltered by it, heights (the function's 15 % ends near there). */
const REACH_H = 20;
const POINTS_ACROSS = 12;
const BEARINGS = 72;
/** Best square to the wind, "still quite effective up to 40° either way" (Cleugh 1997, Burke 1998), to the next 5°. */
const EFFECTIVE_DEG = 45;

/** Share of a season's wind (hours times speed) that comes from within 45° of a bearing. */
export interface SideWind {
  readonly share: number;
  /** The bearing of which that share is greatest, and the share. */
  readonly mostFromDeg: number;
  readonly mostShare: number;
}

export interface BeltSide {
  /** Where it stands, seen from the ground it can shelter: true azimuth, degrees. */
  readonly facingDeg: number;
  readonly growing: SideWind;
  readonly rest: SideWind;
}

/** Points over a field, local metres. */
export function pointsOnField(field: FieldFeature, frame: Frame, across = POINTS_ACROSS): LocalXY[] {
  const rings = field.geometry.coordinates.map((ring) => ringToLocal(frame, ring));
  const xs = rings[0].map(([x]) => x);
  const ys = rings[0].map(([, y]) => y);
  const [west, south] = [Math.min(...xs), Math.min(...ys)];
  const stepM = Math.max(Math.max(...xs) - west, Math.max(...ys) - south) / across;
  const points: LocalXY[] = [];
  for (let i = 0; i < across; i++)
    for (let j = 0; j < across; j++) {
      const at: LocalXY = [west + (i + 0.5) * stepM, south + (j + 0.5) * stepM];
      if (isInside(at, rings)) points.push(at);
    }
  return points.length > 0 ? points : [toLocal(frame, lonLatOf(field))];
}

const lonLatOf = ({ geometry }: FieldFeature): readonly [number, number] => {
  const [lon, lat] = geometry.coordinates[0][0];
  return [lon, lat];
};

/**
 * The side of the field on which a belt stands, by the winds that cross it before they reach the field.
 * Null: no wind that crosses it reaches the field within twenty of its heights.
 */
export function beltSide(
  shape: BeltShape,
  points: readonly XY[],
  convergenceRad: number,
  climate: WindClimate,
): BeltSide | null {
  const reachM = REACH_H * (shape.judged?.heightM ?? 0);
  let east = 0;
  let north = 0;
  for (let i = 0; i < BEARINGS; i++) {
    const trueRad = (2 * Math.PI * i) / BEARINGS;
    const gridRad = trueRad - convergenceRad;
    const [dx, dy] = [Math.sin(gridRad) * reachM, Math.cos(gridRad) * reachM];
    const crossed = points.filter((p) => crosses(p, [p[0] + dx, p[1] + dy], shape.line)).length;
    east += crossed * Math.sin(trueRad);
    north += crossed * Math.cos(trueRad);
  }
  if (Math.hypot(east, north) < 1e-6 * BEARINGS) return null;
  const facingDeg = (radToDeg(Math.atan2(east, north)) + 360) % 360;
  return {
    facingDeg,
    growing: sideWind(climate.growing.sectors, facingDeg),
    rest: sideWind(climate.rest.sectors, facingDeg),
  };
}

function crosses(a: XY, b: XY, line: readonly XY[]): boolean {
  const side = (p: XY, q: XY, r: XY) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  for (let i = 1; i < line.length; i++) {
    const [c, d] = [line[i - 1], line[i]];
    if (side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0) return true;
  }
  return false;
}

/** Sectors of these even roses have a width, as in the engine; any other list is exact directions. */
const SECTOR_COUNTS = [8, 12, 16, 36];
/** A sector's wind is spread evenly over its width, in so many parts. */
const PARTS = 9;

export function sideWind(sectors: readonly ClimateSector[], facingDeg: number): SideWind {
  const widthDeg = SECTOR_COUNTS.includes(sectors.length) ? 360 / sectors.length : 0;
  const total = sectors.reduce((sum, each) => sum + each.frequency * each.meanSpeedMps, 0);
  const within = (centreDeg: number): number => {
    if (!(total > 0)) return 0;
    let sum = 0;
    for (const { fromDeg, frequency, meanSpeedMps } of sectors)
      for (let part = 0; part < PARTS; part++) {
        const deg = fromDeg + widthDeg * ((part + 0.5) / PARTS - 0.5);
        // An even rose has a quarter of its wind within 45 degrees to either side.
        if (Math.cos(degToRad(deg - centreDeg)) > Math.cos(degToRad(EFFECTIVE_DEG)) - 1e-9)
          sum += (frequency * meanSpeedMps) / PARTS;
      }
    return sum / total;
  };
  const bearings = Array.from({ length: 16 }, (_, i) => i * 22.5);
  const mostFromDeg = bearings.reduce((best, deg) => (within(deg) > within(best) ? deg : best), 0);
  return { share: within(facingDeg), mostFromDeg, mostShare: within(mostFromDeg) };
}
