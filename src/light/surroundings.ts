import type { Grid } from '../numeric/grid.ts';

/** The woods around a site as a surface raster shows them, less all that is drawn. Structured-cloneable. */
export interface Surroundings {
  /** Metres of foliage above the ground, cell by cell; 0 where none stands. */
  readonly canopy: Grid;
  /** Optical depth a metre of path, in leaf and leafless. */
  readonly depthOnPerM: number;
  readonly depthOffPerM: number;
  /** Leaf class of the scene's LeafPhases. */
  readonly leafClass: number;
}
