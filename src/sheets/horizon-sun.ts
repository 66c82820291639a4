import { MONTHS } from '../units/months.ts';
import { STRIP_INKS } from './horizon-inks.ts';
import type { DrawnSunPath, HorizonView } from './horizon-input.ts';
import { boxOfText, isFree, type LabelBox } from './horizon-labels.ts';
import type { OnStrip, StripSizes } from './horizon-scale.ts';
import type { Mark, PointMm } from './page-model.ts';
import { textWidthMm } from './text-width.ts';

/** Weight and dash of each path, in pens. */
export const PATH_STROKES: Record<DrawnSunPath['which'], { weight: number; dash?: readonly number[] }> = {
  'june-solstice': { weight: 2 },
  'december-solstice': { weight: 2 },
  'march-equinox': { weight: 2, dash: [8, 5] },
  'september-equinox': { weight: 2, dash: [8, 5] },
  month: { weight: 4 },
};

/** Turned away from the highest hour by so much, degrees, a path's name stands where there is room first. */
const NAME_TURNS_DEG = [0, 22, -22, 40, -40, 60, -60];
/** On the paths that frame the year every so many hours have their figure. */
const HOURS_APART = 3;

/** "21 June". */
export const dayWords = ({ dayOfMonth, month }: Pick<DrawnSunPath, 'dayOfMonth' | 'month'>): string =>
  `${dayOfMonth} ${MONTHS[month]}`;

/** The point of a path at which the sun stands highest: azimuth and altitude, degrees. */
export function highestOf({ points }: DrawnSunPath): { azimuthDeg: number; altitudeDeg: number } {
  let best = 0;
  for (let i = 2; i < points.length; i += 2) if (points[i + 1] > points[best + 1]) best = i;
  return { azimuthDeg: points[best], altitudeDeg: points[best + 1] };
}

/**
 * The paths that are drawn: both solstices, the month's day, and of the equinoxes, which run the same way, the one in
 * the warm half of the year, whose clocks are those of the season.
 */
export function drawnPaths({ sunPaths }: HorizonView): DrawnSunPath[] {
  const top = (which: DrawnSunPath['which']) =>
    Math.max(
      0,
      ...sunPaths.filter((path) => path.which === which).map((path) => highestOf(path).altitudeDeg),
    );
  const other = top('june-solstice') > top('december-solstice') ? 'march-equinox' : 'september-equinox';
  return sunPaths.filter(({ which, points }) => which !== other && points.length > 0);
}

/** Paths with a rim of paper so that they read over foliage, a dot at each full hour, and hours and days where there is room. */
export function sunPathMarks(view: HorizonView, at: OnStrip, sizes: StripSizes, taken: LabelBox[]): Mark[] {
  const { pen, text: size } = sizes;
  // The month's path lies over the others, and its hours and name come first.
  const paths = drawnPaths(view);
  const marks: Mark[] = [];
  const words: Mark[] = [];
  for (const path of paths) {
    const { weight, dash } = PATH_STROKES[path.which];
    const lines = unbroken(path, at);
    marks.push({
      mark: 'lines',
      linesMm: lines,
      stroke: { ink: STRIP_INKS.paper, widthMm: (weight + 3) * pen },
    });
    marks.push({
      mark: 'lines',
      linesMm: lines,
      stroke: { ink: STRIP_INKS.sun, widthMm: weight * pen, dashMm: dash?.map((length) => length * pen) },
    });
    for (const { azimuthDeg, altitudeDeg } of path.hours)
      marks.push({
        mark: 'circle',
        centreMm: at(azimuthDeg, altitudeDeg),
        radiusMm: (path.which === 'month' ? 4 : 3) * pen,
        fill: path.which === 'month' ? STRIP_INKS.sun : STRIP_INKS.paper,
        stroke: { ink: STRIP_INKS.sun, widthMm: 1.5 * pen },
      });
  }
  for (const path of [...paths].reverse()) {
    const bold = path.which === 'month';
    for (const hour of path.hours) {
      if (!bold && hour.clockHour % HOURS_APART !== 0) continue;
      const [x, y] = at(hour.azimuthDeg, hour.altitudeDeg);
      write(String(hour.clockHour), x, y, bold);
    }
    const { azimuthDeg } = highestOf(path);
    for (const turn of NAME_TURNS_DEG) {
      const near = nearestPoint(path, azimuthDeg + turn, at);
      if (near && write(pathName(path), near[0], near[1], bold)) break;
    }
  }
  return [...marks, ...words];

  function write(text: string, wantedX: number, y: number, bold: boolean): boolean {
    const half = textWidthMm(text, size, bold) / 2 + size / 4;
    const x = Math.min(at(360, 0)[0] - half, Math.max(at(0, 0)[0] + half, wantedX));
    for (const baseline of [y - 6 * pen - size * 0.1, y + 6 * pen + size * 0.75]) {
      const box = boxOfText(text, x, baseline, size, bold);
      if (!isFree(box, taken)) continue;
      taken.push(box);
      words.push({
        mark: 'text',
        atMm: [x, baseline],
        text,
        sizeMm: size,
        ink: STRIP_INKS.sun,
        bold,
        anchor: 'middle',
        haloMm: size * 0.16,
      });
      return true;
    }
    return false;
  }
}

const pathName = (path: DrawnSunPath): string =>
  path.which === 'march-equinox' || path.which === 'september-equinox' ? 'equinox' : dayWords(path);

/** The point of a path nearest to an azimuth; null where the path does not come near it. */
function nearestPoint({ points }: DrawnSunPath, azimuthDeg: number, at: OnStrip): PointMm | null {
  let best: PointMm | null = null;
  let least = 3;
  for (let i = 0; i < points.length; i += 2) {
    const off = Math.abs(((((points[i] - azimuthDeg) % 360) + 540) % 360) - 180);
    if (off >= least) continue;
    least = off;
    best = at(points[i], points[i + 1]);
  }
  return best;
}

/** The path as lines that end at one end of the strip and begin again at the other, where the sun passes due north. */
function unbroken({ points }: DrawnSunPath, at: OnStrip): PointMm[][] {
  const lines: PointMm[][] = [];
  let line: PointMm[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const turn = i > 0 ? points[i] - points[i - 2] : 0;
    if (Math.abs(turn) > 180) {
      const toNorth = turn < 0 ? 360 - points[i - 2] : -points[i - 2];
      const share = toNorth / (turn - 360 * Math.sign(turn));
      const altitude = points[i - 1] + share * (points[i + 1] - points[i - 1]);
      line.push(at(turn < 0 ? 360 : 0, altitude));
      lines.push(line);
      line = [at(turn < 0 ? 0 : 360, altitude)];
    }
    line.push(at(points[i], points[i + 1]));
  }
  lines.push(line);
  return lines.filter((each) => each.length > 1);
}
