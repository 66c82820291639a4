/** The parts of the library that are used; it brings no types of its own. */
declare module 'fourier-transform' {
  /** Complex transform of a row whose length is a power of two, in place, without scaling. */
  export function cfft(re: Float64Array, im: Float64Array): void;
  /** Its inverse, divided by the length. */
  export function cifft(re: Float64Array, im: Float64Array): void;
}
