import { COMMON_PRACTICE } from './sources.ts';
import type { Rootstock } from './species.ts';

/**
 * Rootstocks with the full-grown size they give, against a tree on seedling roots. From the heights at which
 * nurseries class them (M9 near 2.5-3 m, MM106 near 4-5 m, seedling apple near 9-10 m); common practice, no source.
 */
const stocks = (...list: readonly (readonly [name: string, sizeFactor: number])[]): readonly Rootstock[] =>
  list.map(([name, sizeFactor]) => ({ name, sizeFactor, source: COMMON_PRACTICE }));

export const APPLE_ROOTSTOCKS = stocks(
  ['M27', 0.2],
  ['M9', 0.29],
  ['M26', 0.36],
  ['MM106', 0.48],
  ['MM111', 0.62],
  ['M25', 0.82],
  ['Seedling', 1],
);
export const PEAR_ROOTSTOCKS = stocks(
  ['Quince C', 0.27],
  ['Quince A', 0.35],
  ['BA29', 0.42],
  ['Seedling', 1],
);
export const PLUM_ROOTSTOCKS = stocks(
  ['VVA-1', 0.3],
  ['Pixy', 0.32],
  ['St Julien A', 0.47],
  ['Brompton', 0.75],
  ['Myrobalan B', 0.85],
  ['Seedling', 1],
);
export const CHERRY_ROOTSTOCKS = stocks(
  ['Gisela 5', 0.22],
  ['Gisela 6', 0.28],
  ['Colt', 0.38],
  ['F12/1', 0.75],
  ['Seedling', 1],
);
/** Sour cherry is a small tree already: the stocks dwarf it less. */
export const SOUR_CHERRY_ROOTSTOCKS = stocks(['Gisela 5', 0.5], ['Colt', 0.75], ['Seedling', 1]);
export const APRICOT_ROOTSTOCKS = stocks(
  ['Torinel', 0.65],
  ['St Julien A', 0.65],
  ['Myrobalan B', 0.9],
  ['Seedling', 1],
);
export const QUINCE_ROOTSTOCKS = stocks(['Quince C', 0.65], ['Quince A', 0.85], ['Seedling', 1]);
