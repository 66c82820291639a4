import type { Grid } from '../numeric/grid.ts';
import { type Relief, reliefOf } from '../wind/relief.ts';

const reliefs = new WeakMap<Grid, { readonly relief: Relief | null }>();

/** What the shape of the land does to the wind; null where it is even. Worked out once for a ground. */
export function siteRelief(ground: Grid): Relief | null {
  const known = reliefs.get(ground) ?? { relief: reliefOf(ground) };
  reliefs.set(ground, known);
  return known.relief;
}
