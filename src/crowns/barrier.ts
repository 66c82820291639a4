/** A windbreak as the shelter engine sees it: a line with a width, or a closed area with an inside. Local frame, metres. */
export interface Barrier {
  /** Index into the scene's list of things. */
  readonly thing: number;
  readonly shape: 'line' | 'area';
  /** x, y pairs; an area's ring is closed implicitly (first vertex not repeated). */
  readonly xyM: Float64Array;
  /** Top above ground at each vertex. */
  readonly heightM: Float64Array;
  /** Open space below the foliage (a raised foot). */
  readonly baseM: number;
  /** Full width of a line across its course; 0 for an area (its width is what the wind crosses). */
  readonly widthM: number;
  /** Optical porosity through the whole width (0 solid, 1 nothing there), in full leaf and leafless. */
  readonly porosityOn: number;
  readonly porosityOff: number;
  /** Index of the leaf class (see LeafPhases). */
  readonly leafClass: number;
}
