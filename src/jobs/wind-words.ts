/**
 * Winds in words, drawn or in a small table become sectors at once, in the caller's thread: no worker is asked, but the
 * way to the engines stays this one.
 */
export { BEAUFORT_SCALE, beaufortForce } from '../wind/beaufort.ts';
export { windFromTable } from '../wind/climate-from-table.ts';
export { sectorsFromWords, type WindInWords } from '../wind/climate-from-words.ts';
export {
  drawnRecord,
  onSixteen,
  type Pull,
  pulled,
  type RoseSeason,
  withCalms,
  yearOf,
} from '../wind/hand-rose.ts';
export { ROUGHNESS_CLASSES } from '../wind/profile.ts';
export { restsWords } from '../wind/rests-words.ts';
