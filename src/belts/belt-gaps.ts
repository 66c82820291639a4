/** Where the wind finds a way between a belt and what it should join, or through it. */
import type { Frame } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { GrowthMoment } from '../scene/options.ts';
import { labelOf, standingAt } from '../scene/things.ts';
import { chosenFeatures, isOfKind } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import type { XY } from '../site/plane-geometry.ts';
import { pathDefaults } from '../site/records/way.ts';
import { degToRad, radToDeg } from '../units/angle.ts';
import { type BeltShape, JUDGED_AT_YEARS } from './belt-shape.ts';

/** Narrower is no gap: branches of neighbouring plants meet. Common practice, no source. */
const LEAST_GAP_M = 1;
/** Wider it is an end and no gap. Common practice, no source. */
const MOST_GAP_M = 30;
/** What lies further aside of the way on which a belt ends does not carry it on. Common practice, no source. */
const IN_LINE_DEG = 60;

/** An opening beside an end of a belt, up to the next thing that stands. */
export interface EndGap {
  readonly widthM: number;
  /** True azimuth from the belt's middle to that end, degrees. */
  readonly endDeg: number;
  readonly to: string;
  readonly toId: string | number;
}

/** A path through a belt. */
export interface PathGap {
  readonly path: string;
  readonly widthM: number;
  /** From the end that lies towards this azimuth. */
  readonly fromEndM: number;
  readonly endDeg: number;
}

interface Other {
  readonly id: string | number;
  readonly label: string;
  readonly lines: readonly (readonly XY[])[];
  readonly halfWidthM: number;
}

/** What stands beside belts when they are judged: belts, blocks, walls and buildings. */
function others(document: SiteDocument, frame: Frame, moment: GrowthMoment): Other[] {
  const standing = standingAt(document, { ...moment, year: JUDGED_AT_YEARS });
  const breaks = standing.breaks.map(({ feature, stand }): Other => {
    const { geometry } = feature;
    return {
      id: feature.id,
      label: labelOf(document, feature),
      lines:
        geometry.type === 'LineString'
          ? [ringToLocal(frame, geometry.coordinates)]
          : geometry.coordinates.map((ring) => ringToLocal(frame, ring)),
      halfWidthM: stand.widthM / 2,
    };
  });
  const houses = standing.buildings.map(
    ({ feature }): Other => ({
      id: feature.id,
      label: labelOf(document, feature),
      lines: feature.geometry.coordinates.map((ring) => ringToLocal(frame, ring)),
      halfWidthM: 0,
    }),
  );
  return [...breaks, ...houses];
}

const trueDeg = (from: XY, to: XY, convergenceRad: number): number =>
  (radToDeg(Math.atan2(to[0] - from[0], to[1] - from[1]) + convergenceRad) + 360) % 360;

/** The openings beside both ends of a belt; none for a block, which has no ends. */
export function endGaps(
  document: SiteDocument,
  shape: BeltShape,
  frame: Frame,
  moment: GrowthMoment,
): EndGap[] {
  if (shape.isArea) return [];
  const { line } = shape;
  const beside = others(document, frame, moment).filter(({ id }) => id !== shape.feature.id);
  const ends = [
    { end: line[0], before: line[1], far: line[line.length - 1] },
    { end: line[line.length - 1], before: line[line.length - 2], far: line[0] },
  ];
  return ends.flatMap(({ end, before, far }): EndGap[] => {
    const onward = Math.atan2(end[0] - before[0], end[1] - before[1]);
    const ahead = beside.flatMap((other) => {
      const place = nearest(end, other.lines);
      const apartM = Math.hypot(place[0] - end[0], place[1] - end[1]);
      const turn = Math.atan2(place[0] - end[0], place[1] - end[1]) - onward;
      // Where it touches, or as good as, there is nothing to look at beside this end.
      const widthM = apartM - (isEndOf(place, other.lines) ? 0 : other.halfWidthM);
      return widthM < LEAST_GAP_M || Math.cos(turn) >= Math.cos(degToRad(IN_LINE_DEG))
        ? [{ other, widthM }]
        : [];
    });
    const next = ahead.sort((a, b) => a.widthM - b.widthM)[0];
    if (!next || next.widthM < LEAST_GAP_M || next.widthM > MOST_GAP_M) return [];
    return [
      {
        widthM: next.widthM,
        endDeg: trueDeg(far, end, frame.convergenceRad),
        to: next.other.label,
        toId: next.other.id,
      },
    ];
  });
}

const isEndOf = (p: XY, lines: readonly (readonly XY[])[]): boolean =>
  lines.some((line) =>
    [line[0], line[line.length - 1]].some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-6),
  );

function nearest(p: XY, lines: readonly (readonly XY[])[]): XY {
  let best: XY = lines[0][0];
  let leastM = Number.POSITIVE_INFINITY;
  for (const line of lines)
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1], line[i]];
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const squared = dx * dx + dy * dy;
      const t =
        squared === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / squared));
      const q: XY = [a[0] + t * dx, a[1] + t * dy];
      const apartM = Math.hypot(p[0] - q[0], p[1] - q[1]);
      if (apartM < leastM) [best, leastM] = [q, apartM];
    }
  return best;
}

/** The paths that are drawn through a belt: the engine's belt has no opening there. */
export function pathGaps(
  document: SiteDocument,
  shape: BeltShape,
  frame: Frame,
  layout: string | null,
): PathGap[] {
  if (shape.isArea) return [];
  return chosenFeatures(document, layout).flatMap((feature): PathGap[] => {
    if (!isOfKind(feature, 'path') || feature.geometry.type !== 'LineString') return [];
    const crossingM = crossingAlong(shape.line, ringToLocal(frame, feature.geometry.coordinates));
    if (crossingM === null) return [];
    const { line, lengthM } = shape;
    const [first, last] = [line[0], line[line.length - 1]];
    const fromFirst = crossingM <= lengthM / 2;
    return [
      {
        path: labelOf(document, feature),
        widthM: 2 * (feature.properties.offsetM ?? pathDefaults.offsetM),
        fromEndM: fromFirst ? crossingM : lengthM - crossingM,
        endDeg: fromFirst
          ? trueDeg(last, first, frame.convergenceRad)
          : trueDeg(first, last, frame.convergenceRad),
      },
    ];
  });
}

/** How far along a line another crosses it first, metres; null: nowhere. */
function crossingAlong(line: readonly XY[], other: readonly XY[]): number | null {
  let alongM = 0;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
    for (let k = 1; k < other.length; k++) {
      const [c, d] = [other[k - 1], other[k]];
      const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
      const det = ux * vy - uy * vx;
      if (det === 0) continue;
      const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / det;
      const s = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / det;
      if (t >= 0 && t <= 1 && s >= 0 && s <= 1) return alongM + t * Math.hypot(ux, uy);
    }
    alongM += Math.hypot(ux, uy);
  }
  return null;
}
