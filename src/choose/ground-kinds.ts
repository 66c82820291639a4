import type { Enough, StateMaps } from './choose-types.ts';

/** What a cell of a field has enough of. */
export const GROUND_KINDS = ['neither', 'light', 'shelter', 'both'] as const;
export type GroundKind = (typeof GROUND_KINDS)[number];
export const GROUND_KIND_WORDS: Readonly<Record<GroundKind, string>> = {
  neither: 'neither',
  light: 'enough light',
  shelter: 'enough shelter',
  both: 'both',
};

/** Cell by cell, as an index into GROUND_KINDS; 255 outside the field and where nothing is known. */
export const NO_KIND = 255;
export function groundKinds(
  { lightShare, windShare }: StateMaps,
  mask: Uint8Array,
  enough: Enough,
): Uint8Array {
  return mask.map((inside, cell) => {
    const [light, cut] = [lightShare[cell], 1 - windShare[cell]];
    if (!inside || Number.isNaN(light) || Number.isNaN(cut)) return NO_KIND;
    return (light >= enough.light ? 1 : 0) + (cut >= enough.windCut ? 2 : 0);
  });
}
