/** Winds in words become sectors at once, in the caller's thread: no worker is asked, but the way to the engines stays this one. */
export { BEAUFORT_SCALE } from '../wind/beaufort.ts';
export { sectorsFromWords, type WindInWords } from '../wind/climate-from-words.ts';
