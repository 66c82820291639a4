import { STRIP_INKS } from './horizon-inks.ts';
import type { HorizonInput, SeenOutline } from './horizon-input.ts';
import type { OnStrip, StripSizes } from './horizon-scale.ts';
import type { Mark } from './page-model.ts';
import { textWidthMm } from './text-width.ts';

/** A part of the strip on which something is written. */
export interface LabelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Things lower than half a fist have no name on the strip, degrees; the table lists what they take. */
export const STANDS_FROM_DEG = 5;
const OVERHEAD_DEG = 89;

const overlap = (a: LabelBox, b: LabelBox): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const isFree = (box: LabelBox, taken: readonly LabelBox[]): boolean =>
  !taken.some((other) => overlap(box, other));

/** The box of a text whose baseline has its middle at a place. */
export const boxOfText = (
  text: string,
  x: number,
  baseline: number,
  size: number,
  bold = false,
): LabelBox => {
  const width = textWidthMm(text, size, bold);
  return { x: x - width / 2, y: baseline - 0.8 * size, width, height: size };
};

/** Names on the strip: first what takes most sun in the season, then what stands largest, each where there is room for it. */
export function thingLabels(
  { view, things, hours }: HorizonInput,
  at: OnStrip,
  strip: { left: number; top: number; width: number; height: number },
  { text: size }: StripSizes,
  taken: LabelBox[],
  chosen: number | null,
): Mark[] {
  const weight = (outline: SeenOutline) =>
    (outline.thing === chosen ? 1e6 : 0) +
    10 * Math.max(0, hours.season.toThings[outline.thing]) +
    faceDeg2(outline);
  const marks: Mark[] = [];
  for (const outline of [...view.outlines].sort((a, b) => weight(b) - weight(a))) {
    const bold = outline.thing === chosen;
    if (outline.topAltitudeDeg < STANDS_FROM_DEG && !bold) continue;
    const { label } = things[outline.thing];
    // What stands overhead has its top in every direction.
    const overhead = outline.topAltitudeDeg > OVERHEAD_DEG;
    const [x, y] = at(overhead ? 180 : outline.topAzimuthDeg, outline.topAltitudeDeg);
    const half = textWidthMm(label, size, bold) / 2;
    const middle = Math.min(
      strip.left + strip.width - half - size / 3,
      Math.max(strip.left + half + size / 3, x),
    );
    // Just above its top, a little higher, or on its face.
    const baselines = [y - size / 3, y - 1.4 * size, y + 1.2 * size, y + 2.4 * size];
    const baseline = baselines.find((each) => {
      if (each - size < strip.top || each > strip.top + strip.height) return false;
      return isFree(boxOfText(label, middle, each, size, bold), taken);
    });
    if (baseline === undefined) continue;
    taken.push(boxOfText(label, middle, baseline, size, bold));
    marks.push({
      mark: 'text',
      atMm: [middle, baseline],
      text: label,
      sizeMm: size,
      ink: bold ? STRIP_INKS.chosen : STRIP_INKS.ink,
      bold,
      anchor: 'middle',
      haloMm: size * 0.16,
    });
  }
  return marks;
}

/** Area of a thing's face on the strip, square degrees. */
function faceDeg2({ rings }: SeenOutline): number {
  let sum = 0;
  for (const ring of rings) {
    let twice = 0;
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      twice += ring[i] * ring[j + 1] - ring[j] * ring[i + 1];
    }
    sum += Math.abs(twice) / 2;
  }
  return sum;
}
