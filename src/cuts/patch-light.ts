import type { CutPatch } from './cut-model.ts';

/** Share of a patch's cells that keep at least its light; 0 where the light of none is known. */
export function areaShareOf({ mask, shareToKeep }: CutPatch, light: Float32Array): number {
  let [counted, bright] = [0, 0];
  for (let cell = 0; cell < mask.length; cell++) {
    if (!mask[cell] || Number.isNaN(light[cell])) continue;
    counted++;
    if (light[cell] >= shareToKeep) bright++;
  }
  return counted > 0 ? bright / counted : 0;
}

export const hasEnough = (patch: CutPatch, light: Float32Array): boolean =>
  areaShareOf(patch, light) >= patch.areaShare;
