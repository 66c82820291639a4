/** The strip in words, for those who hear it or read it out: what stands where, and where the sun goes. */
import { directionWord } from '../units/compass.ts';
import type { DrawnSunPath, HorizonInput, SeenOutline } from './horizon-input.ts';
import { STANDS_FROM_DEG } from './horizon-labels.ts';
import { fistWords, lengthWords } from './horizon-scale.ts';
import { dayWords, drawnPaths, highestOf } from './horizon-sun.ts';
import type { LengthUnit } from './plan-input.ts';

/** One sentence for each thing in sight, in compass order of its highest point, then one for the land and one for each path. */
export function horizonInWords(input: HorizonInput): string[] {
  const { view, things, unit } = input;
  const standing = view.outlines
    .filter(({ topAltitudeDeg }) => topAltitudeDeg >= STANDS_FROM_DEG)
    .sort((a, b) => a.topAzimuthDeg - b.topAzimuthDeg);
  const highestLand = view.landAltitudeDeg.reduce((best, altitude) => Math.max(best, altitude), 0);
  const column = view.landAltitudeDeg.indexOf(highestLand);
  return [
    ...standing.map((outline) => `${things[outline.thing].label}: ${thingWords(outline, unit)}.`),
    highestLand < 0.5
      ? 'The land: level all around.'
      : `The land: highest in the ${directionWord((column + 0.5) * view.stepDeg)}, ${fistWords(highestLand)}.`,
    ...drawnPaths(view).map(pathWords),
  ];
}

function thingWords(outline: SeenOutline, unit: LengthUnit): string {
  const { from, until } = reach(outline);
  const where =
    until - from >= 350
      ? 'all around'
      : directionWord(from) === directionWord(until)
        ? `in the ${directionWord(from)}`
        : `from ${directionWord(from)} to ${directionWord(until)}`;
  const through = outline.solid
    ? 'lets no light through'
    : `lets ${Math.round(100 * outline.letsThrough)} % through`;
  return `${where}, up to ${fistWords(outline.topAltitudeDeg)}, ${lengthWords(outline.nearestM, unit)} off, ${through}`;
}

/** The azimuths between which a thing stands, clockwise: its widest gap is what lies outside. */
function reach({ rings }: SeenOutline): { from: number; until: number } {
  const spans = rings
    .map((ring): [number, number] => {
      let from = Number.POSITIVE_INFINITY;
      let until = Number.NEGATIVE_INFINITY;
      for (let i = 0; i < ring.length; i += 2) {
        from = Math.min(from, ring[i]);
        until = Math.max(until, ring[i]);
      }
      return [from, until];
    })
    .sort((a, b) => a[0] - b[0]);
  let gap = { width: -1, from: 0, until: 0 };
  let covered = spans[0][1];
  for (const [from, until] of [...spans.slice(1), [spans[0][0] + 360, 0] as const]) {
    if (from - covered > gap.width) gap = { width: from - covered, from: covered, until: from };
    covered = Math.max(covered, until);
  }
  return { from: gap.until % 360, until: (gap.until % 360) + 360 - Math.max(0, gap.width) };
}

function pathWords(path: DrawnSunPath): string {
  const { points, hours, clock } = path;
  const top = highestOf(path);
  const rises = directionWord(points[0]);
  const sets = directionWord(points[points.length - 2]);
  const near = hours.reduce((best, hour) => (hour.altitudeDeg > best.altitudeDeg ? hour : best), hours[0]);
  return `The sun on ${dayWords(path)}: rises in the ${rises}, stands highest near ${near?.clockHour ?? 12} o’clock (${clock}) in the ${directionWord(top.azimuthDeg)} at ${fistWords(top.altitudeDeg)}, sets in the ${sets}.`;
}
