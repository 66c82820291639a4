/** Values of a smooth function at even steps from 0. */
export interface EvenTable {
  readonly step: number;
  readonly values: Float64Array;
}

export function evenTable(step: number, last: number, valueAt: (x: number) => number): EvenTable {
  return {
    step,
    values: Float64Array.from({ length: Math.round(last / step) + 1 }, (_, i) => valueAt(i * step)),
  };
}

/** Straight between the nodes; beyond the ends the value at the end. */
export function lookUp({ step, values }: EvenTable, x: number): number {
  const at = Math.min(values.length - 1, Math.max(0, x / step));
  const i = Math.min(values.length - 2, Math.floor(at));
  return values[i] + (at - i) * (values[i + 1] - values[i]);
}
