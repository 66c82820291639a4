/** Discrete Fourier transform of sizes that are powers of two (Cooley & Tukey 1965), in place, without scaling. */

/**
 * Transforms one row of complex numbers that lie `stride` apart, from `offset` on. Mutates `re` and `im`.
 * @param sign -1: forward, exp(-i k x); 1: backward, to be divided by the size.
 */
function transform(
  re: Float64Array,
  im: Float64Array,
  offset: number,
  stride: number,
  size: number,
  sign: 1 | -1,
): void {
  for (let i = 1, j = 0; i < size; i++) {
    let bit = size >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i >= j) continue;
    const [a, b] = [offset + i * stride, offset + j * stride];
    [re[a], re[b]] = [re[b], re[a]];
    [im[a], im[b]] = [im[b], im[a]];
  }
  for (let length = 2; length <= size; length <<= 1) {
    const half = length >> 1;
    for (let k = 0; k < half; k++) {
      const angle = (sign * 2 * Math.PI * k) / length;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      for (let start = k; start < size; start += length) {
        const a = offset + start * stride;
        const b = a + half * stride;
        const x = re[b] * c - im[b] * s;
        const y = re[b] * s + im[b] * c;
        re[b] = re[a] - x;
        im[b] = im[a] - y;
        re[a] += x;
        im[a] += y;
      }
    }
  }
}

/**
 * Transforms a square of size * size complex numbers, row-major. Mutates `re` and `im`. Throws RangeError where the
 * size is no power of two or the arrays do not fit.
 */
export function fourierSquare(re: Float64Array, im: Float64Array, size: number, sign: 1 | -1): void {
  if (size < 1 || (size & (size - 1)) !== 0 || re.length !== size * size || im.length !== size * size)
    throw new RangeError(`A square of ${size} a side, a power of two, is needed; got ${re.length} values.`);
  for (let row = 0; row < size; row++) transform(re, im, row * size, 1, size, sign);
  for (let column = 0; column < size; column++) transform(re, im, column, size, size, sign);
}
