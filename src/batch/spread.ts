/** How a quantity is spread over the cells of an area. */
export interface Spread {
  readonly mean: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** Value below which a share of the sorted values lies, linear between neighbours (type 7 of Hyndman & Fan 1996). */
function quantile(sorted: Float64Array, share: number): number {
  const at = (sorted.length - 1) * share;
  const below = Math.floor(at);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
}

/** Spread of a value over the counted cells that have one; null where none has. */
export function spreadOver(mask: Uint8Array, valueAt: (cell: number) => number): Spread | null {
  const values: number[] = [];
  let sum = 0;
  for (let cell = 0; cell < mask.length; cell++) {
    if (mask[cell] === 0) continue;
    const value = valueAt(cell);
    if (Number.isNaN(value)) continue;
    values.push(value);
    sum += value;
  }
  if (values.length === 0) return null;
  const sorted = Float64Array.from(values).sort();
  return {
    mean: sum / values.length,
    p10: quantile(sorted, 0.1),
    p50: quantile(sorted, 0.5),
    p90: quantile(sorted, 0.9),
  };
}
