/**
 * The year cut into phases of equal leaf state. Each leaf class (class 0 always in full leaf) has in each phase a
 * leaf share between 0 (leafless) and 1 (full leaf); the optical depth of a thing of that class is
 * share * depthOn + (1 - share) * depthOff.
 */
export interface LeafPhases {
  readonly classCount: number;
  readonly phaseCount: number;
  /** Phase of each day of the calendar year, index 0 = 1 January; 365 or 366 long. */
  readonly phaseOfDay: Uint8Array;
  /** phaseCount * classCount, row-major by phase. */
  readonly leafShare: Float32Array;
}
