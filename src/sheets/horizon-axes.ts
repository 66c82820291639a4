import { directionWord } from '../units/compass.ts';
import { STRIP_INKS } from './horizon-inks.ts';
import { FIST_DEG, type StripSizes } from './horizon-scale.ts';
import type { Mark, PointMm } from './page-model.ts';
import { textWidthMm } from './text-width.ts';

const turned = (deg: number): number => ((deg % 360) + 360) % 360;
/** Distance of a turn to the nearest direction in words, degrees. */
const toDirection = (turn: number): number => Math.abs(turn - Math.round(turn / 45) * 45);

/** Height of the compass under the strip, in sizes of its text. */
export const COMPASS_LINES = 4.4;

/** Ticks every fist, degrees from true north, the directions in words, and what a compass needle shows there. */
export function compassAxis(declinationDeg: number, sizes: StripSizes, left: number, top: number): Mark[] {
  const { perDeg, text: size, pen } = sizes;
  const widest = textWidthMm('350°', size);
  const everyDeg = [10, 15, 30, 45].find((step) => step * perDeg > 1.5 * widest) ?? 45;
  const ticks: PointMm[][] = [];
  const marks: Mark[] = [];
  const write = (text: string, turn: number, line: number, ink: string, bold = false) =>
    marks.push({
      mark: 'text',
      atMm: [left + turn * perDeg, top + size * line],
      text,
      sizeMm: size,
      ink,
      bold,
      // The ends stay within the strip, whose rim may be the edge of what can be seen.
      anchor: turn === 0 ? 'start' : turn === 360 ? 'end' : 'middle',
    });
  for (let turn = 0; turn <= 360; turn += 5) {
    const x = left + turn * perDeg;
    const named = turn % 45 === 0;
    if (turn % FIST_DEG === 0 || named)
      ticks.push([
        [x, top],
        [x, top + size * (named ? 0.5 : 0.3)],
      ]);
    if (named || (turn % everyDeg === 0 && toDirection(turn) * perDeg > 1.4 * widest))
      write(`${turned(turn)}°`, turn, 1.45, named ? STRIP_INKS.ink : STRIP_INKS.softInk);
    if (!named) continue;
    write(directionWord(turn), turn, 2.7, STRIP_INKS.ink, true);
    write(`needle ${Math.round(turned(turn - declinationDeg)) % 360}°`, turn, 3.9, STRIP_INKS.softInk);
  }
  return [{ mark: 'lines', linesMm: ticks, stroke: { ink: STRIP_INKS.ink, widthMm: 1.5 * pen } }, ...marks];
}

/** Altitudes beside the strip, every fist: degrees, and fists beneath where they are wanted. */
export function altitudeAxis(
  topDeg: number,
  sizes: StripSizes,
  edge: { readonly x: number; readonly top: number; readonly anchor: 'start' | 'end' },
): Mark[] {
  const { perDeg, text: size } = sizes;
  const marks: Mark[] = [];
  for (let altitude = 0; altitude <= topDeg; altitude += FIST_DEG) {
    const y = edge.top + (topDeg - altitude) * perDeg;
    const fists = altitude / FIST_DEG;
    const line = (text: string, baseline: number, ink: string) =>
      marks.push({ mark: 'text', atMm: [edge.x, baseline], text, sizeMm: size, ink, anchor: edge.anchor });
    // Both lie within the fist's own room, and the lowest stands on the horizon.
    line(`${altitude}°`, altitude === 0 ? y : y + 0.35 * size, STRIP_INKS.ink);
    if (fists > 0 && 2.2 * size < FIST_DEG * perDeg)
      line(fists === 1 ? '1 fist' : `${fists} fists`, y + 1.4 * size, STRIP_INKS.softInk);
  }
  return marks;
}
