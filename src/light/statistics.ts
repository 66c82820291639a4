/** Figures over the cells of a field or a patch. */

export interface CellStatistics {
  readonly mean: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** Over the cells where mask is 1 and the value is a number; null where there are none. */
export function cellStatistics(values: ArrayLike<number>, mask: ArrayLike<number>): CellStatistics | null {
  const counted = countedValues(values, mask);
  if (counted.length === 0) return null;
  let sum = 0;
  for (const value of counted) sum += value;
  counted.sort();
  // Linear between ranks, so that the median of two cells is halfway.
  const percentile = (share: number): number => {
    const at = share * (counted.length - 1);
    const low = Math.floor(at);
    const high = Math.min(counted.length - 1, low + 1);
    return counted[low] + (at - low) * (counted[high] - counted[low]);
  };
  return {
    mean: sum / counted.length,
    p10: percentile(0.1),
    p50: percentile(0.5),
    p90: percentile(0.9),
  };
}

function countedValues(values: ArrayLike<number>, mask: ArrayLike<number>): Float64Array {
  if (values.length !== mask.length)
    throw new Error(`The mask has ${mask.length} values; expected ${values.length}, one for each cell.`);
  let count = 0;
  const counted = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++)
    if (mask[i] && !Number.isNaN(values[i])) counted[count++] = values[i];
  return counted.subarray(0, count);
}

export interface EnoughLight {
  /** At least areaShare of the cells keep at least the share of light. */
  readonly enough: boolean;
  readonly areaShareWithEnoughLight: number;
}

/**
 * Whether a patch keeps the light it must.
 * @param seasonShare share of open light over the growing season, one a cell
 * @param lightShareToKeep what a cell must keep; @param areaShare on how much of the patch. Null for no cells.
 */
export function enoughLight(
  seasonShare: ArrayLike<number>,
  mask: ArrayLike<number>,
  lightShareToKeep: number,
  areaShare: number,
): EnoughLight | null {
  const counted = countedValues(seasonShare, mask);
  if (counted.length === 0) return null;
  let kept = 0;
  // The arrays are float32: a cell that keeps exactly the share must not fail by rounding.
  for (const share of counted) if (share >= lightShareToKeep - 1e-6) kept++;
  const areaShareWithEnoughLight = kept / counted.length;
  return { enough: areaShareWithEnoughLight >= areaShare - 1e-9, areaShareWithEnoughLight };
}
