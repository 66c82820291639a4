/** How one raster departs from another over the cells of a mask. */
export interface Change {
  /** Means over the counted cells. */
  readonly before: number;
  readonly after: number;
  /** In a tenth of the counted cells the value changes by at least this much, up or down. */
  readonly widelyBy: number;
}

/**
 * The change from one raster to another over the cells where the mask is 1 and both have a value; null where there
 * are none. All three are row-major over the same grid.
 */
export function changeOver(
  before: ArrayLike<number>,
  after: ArrayLike<number>,
  mask: ArrayLike<number>,
): Change | null {
  if (before.length !== after.length || before.length !== mask.length)
    throw new RangeError(
      `expected as many values before as after and in the mask, got ${before.length}, ${after.length} and ${mask.length}`,
    );
  const steps: number[] = [];
  let sumBefore = 0;
  let sumAfter = 0;
  for (let cell = 0; cell < mask.length; cell++) {
    if (!mask[cell] || Number.isNaN(before[cell]) || Number.isNaN(after[cell])) continue;
    sumBefore += before[cell];
    sumAfter += after[cell];
    steps.push(Math.abs(after[cell] - before[cell]));
  }
  if (steps.length === 0) return null;
  steps.sort((a, b) => a - b);
  return {
    before: sumBefore / steps.length,
    after: sumAfter / steps.length,
    widelyBy: steps[Math.floor(0.9 * (steps.length - 1))],
  };
}
