import { cfft, cifft } from 'fourier-transform';

/**
 * Transforms a square of size * size complex numbers, row-major; backward divides by their number. Mutates `re` and
 * `im`. Throws RangeError where the size is no power of two or the arrays do not fit.
 */
export function fourierSquare(
  re: Float64Array,
  im: Float64Array,
  size: number,
  direction: 'forward' | 'backward',
): void {
  if (size < 2 || (size & (size - 1)) !== 0 || re.length !== size * size || im.length !== size * size)
    throw new RangeError(`A square of ${size} a side, a power of two, is needed; got ${re.length} values.`);
  const transform = direction === 'forward' ? cfft : cifft;
  // The library takes one row at a time, so columns are turned into rows and back.
  for (let pass = 0; pass < 2; pass++) {
    for (let from = 0; from < re.length; from += size)
      transform(re.subarray(from, from + size), im.subarray(from, from + size));
    transpose(re, size);
    transpose(im, size);
  }
}

function transpose(values: Float64Array, size: number): void {
  for (let r = 0; r < size; r++)
    for (let c = 0; c < r; c++) {
      const [a, b] = [r * size + c, c * size + r];
      [values[a], values[b]] = [values[b], values[a]];
    }
}
