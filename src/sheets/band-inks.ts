import type { BandSet } from '../units/bands.ts';
import type { Hatching } from './hatch.ts';
import { hatchLines } from './hatch.ts';
import { INK } from './inks.ts';
import type { Mark, PointMm } from './page-model.ts';

/** How one band is inked: a tint, and lines that tell it from its neighbours on a black-and-white printer. */
export interface BandInk {
  readonly tint: string;
  readonly hatchings: readonly Hatching[];
  readonly hatchInk: string;
}

/** From none to close: the darker the band, the closer the lines. */
const STEPS: readonly (readonly Hatching[])[] = [
  [],
  [{ angleDeg: 45, spacingMm: 4.5 }],
  [{ angleDeg: 45, spacingMm: 2.6 }],
  [{ angleDeg: 45, spacingMm: 1.5 }],
  [
    { angleDeg: 45, spacingMm: 2 },
    { angleDeg: -45, spacingMm: 2 },
  ],
  [
    { angleDeg: 45, spacingMm: 1.2 },
    { angleDeg: -45, spacingMm: 1.2 },
  ],
];

/** Relative luminance of sRGB, 0 black to 1 white (IEC 61966-2-1). */
export function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((start) => {
    const value = Number.parseInt(hex.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** One ink for each band of the set, by the order of their lightness. */
export function bandInks(set: BandSet, inking: 'tints' | 'ink'): BandInk[] {
  const lightestFirst = [...set.bands].sort((a, b) => luminance(b.ink) - luminance(a.ink));
  return set.bands.map((band) => ({
    tint: inking === 'tints' ? band.ink : '#ffffff',
    hatchings: STEPS[Math.min(lightestFirst.indexOf(band), STEPS.length - 1)],
    // Dark lines vanish on a dark tint.
    hatchInk: inking === 'tints' && luminance(band.ink) < 0.12 ? '#dfe5dc' : INK,
  }));
}

/** The hatching of an area (even-odd rings). */
export function hatchMarks(rings: readonly (readonly PointMm[])[], ink: BandInk): Mark[] {
  return ink.hatchings.map((hatching) => ({
    mark: 'lines',
    linesMm: hatchLines(rings, hatching),
    stroke: { ink: ink.hatchInk, widthMm: 0.12 },
  }));
}
