import type { FieldFound } from '../choose/choose-types.ts';
import type { FieldAtEnds } from '../jobs/run-choose-ends.ts';
import type { FeatureId } from '../site/document.ts';

/** The fields as they were found; how firm a choice is waits for the last pass. */
export interface FieldsCompared {
  readonly fields: readonly FieldFound[];
  readonly atEnds: ReadonlyMap<FeatureId, FieldAtEnds> | null;
}
