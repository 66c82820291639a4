/**
 * The horizon from a spot as a strip in compass order at one scale along and up: land, what stands before the sky
 * tinted by what it lets through, the sun's paths, names, and a rule in degrees and fists. Lengths are millimetres on
 * paper and pixels on the screen; the sizes say which.
 */
import { STRIP_INKS } from './horizon-inks.ts';
import type { HorizonInput, HorizonView, SeenOutline } from './horizon-input.ts';
import { type LabelBox, thingLabels } from './horizon-labels.ts';
import { foliageRegions } from './horizon-regions.ts';
import { FIST_DEG, type OnStrip, type StripSizes } from './horizon-scale.ts';
import { highestOf, sunPathMarks } from './horizon-sun.ts';
import type { Mark, PointMm, Stroke } from './page-model.ts';

/** The strip never shows less than this, degrees. */
const LEAST_TOP_DEG = 30;

/** Upper edge of the strip, degrees: half a fist above the highest of sun and land, on a whole fist; crowns overhead are cut. */
export function stripTopDeg({ sunPaths, landAltitudeDeg, outlines }: HorizonView): number {
  let highest = LEAST_TOP_DEG - FIST_DEG / 2;
  for (const path of sunPaths)
    if (path.points.length > 0) highest = Math.max(highest, highestOf(path).altitudeDeg);
  for (const altitude of landAltitudeDeg) highest = Math.max(highest, altitude);
  for (const { topAltitudeDeg } of outlines) highest = Math.max(highest, topAltitudeDeg);
  return Math.min(90, Math.ceil((highest + FIST_DEG / 2) / FIST_DEG) * FIST_DEG);
}

/**
 * The view itself, without its axes.
 * @param corner the strip's upper left; @param chosen a thing to be pointed out
 */
export function drawStrip(
  input: HorizonInput,
  topDeg: number,
  sizes: StripSizes,
  corner: { readonly left: number; readonly top: number },
  chosen: number | null = null,
): Mark[] {
  const { view } = input;
  const { left, top } = corner;
  const { perDeg, pen } = sizes;
  const width = 360 * perDeg;
  const height = topDeg * perDeg;
  const at: OnStrip = (azimuthDeg, altitudeDeg) => [
    left + azimuthDeg * perDeg,
    top + (topDeg - altitudeDeg) * perDeg,
  ];
  const taken: LabelBox[] = [];
  const sun = sunPathMarks(view, at, sizes, taken);
  const frame: PointMm[] = [
    [left, top],
    [left + width, top],
    [left + width, top + height],
    [left, top + height],
  ];
  const line = (weight: number, ink: string = STRIP_INKS.ink): Stroke => ({ ink, widthMm: weight * pen });
  const marks: Mark[] = [
    { mark: 'lines', linesMm: rules(topDeg, at), stroke: line(1, STRIP_INKS.rule) },
    {
      mark: 'polygon',
      ringsMm: [landRing(view, at)],
      fill: STRIP_INKS.land,
      stroke: line(1.5),
    },
    ...view.outlines
      .filter(({ solid }) => solid)
      .map(
        (outline): Mark => ({
          mark: 'polygon',
          ringsMm: ringsOf(outline, at),
          fill: STRIP_INKS.stone,
          stroke: line(2),
        }),
      ),
    ...foliageRegions(view, topDeg).map(
      ({ tint, rings }): Mark => ({
        mark: 'polygon',
        ringsMm: rings.map((ring) => ring.map(([azimuth, altitude]) => at(azimuth, altitude))),
        fill: STRIP_INKS.foliage[tint],
      }),
    ),
    // Once more, thinly: what stands behind foliage is still there.
    { mark: 'line', pointsMm: crestOf(view, at), stroke: line(1) },
    ...view.outlines
      .filter(({ thing }) => thing !== chosen)
      .map((outline): Mark => ({ mark: 'polygon', ringsMm: ringsOf(outline, at), stroke: line(1) })),
    ...view.outlines
      .filter(({ thing }) => thing === chosen)
      .map(
        (outline): Mark => ({
          mark: 'polygon',
          ringsMm: ringsOf(outline, at),
          stroke: line(4, STRIP_INKS.chosen),
        }),
      ),
    ...sun,
    ...thingLabels(input, at, { left, top, width, height }, sizes, taken, chosen),
  ];
  return [
    { mark: 'polygon', ringsMm: [frame], fill: STRIP_INKS.paper },
    { mark: 'clip', boxMm: { xMm: left, yMm: top, widthMm: width, heightMm: height }, marks },
    { mark: 'polygon', ringsMm: [frame], stroke: line(1.5) },
  ];
}

/** A line every fist up, and every eighth of the compass. */
function rules(topDeg: number, at: OnStrip): PointMm[][] {
  const lines: PointMm[][] = [];
  for (let altitude = FIST_DEG; altitude < topDeg; altitude += FIST_DEG)
    lines.push([at(0, altitude), at(360, altitude)]);
  for (let azimuth = 45; azimuth < 360; azimuth += 45) lines.push([at(azimuth, 0), at(azimuth, topDeg)]);
  return lines;
}

/** The land's own outline, closed below the strip and beyond its ends. */
const landRing = (view: HorizonView, at: OnStrip): PointMm[] => [
  at(-1, -1),
  ...crestOf(view, at),
  at(361, -1),
];

/** The land's horizon from beyond one end of the strip to beyond the other. */
function crestOf({ landAltitudeDeg: land, stepDeg, columns }: HorizonView, at: OnStrip): PointMm[] {
  const crest = Array.from(land, (altitude, column) => at((column + 0.5) * stepDeg, altitude));
  return [at(-1, land[0]), ...crest, at(361, land[columns - 1])];
}

const ringsOf = ({ rings }: SeenOutline, at: OnStrip): PointMm[][] =>
  rings.map((ring) => Array.from({ length: ring.length / 2 }, (_, i) => at(ring[2 * i], ring[2 * i + 1])));
