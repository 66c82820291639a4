import { type FieldCut, fieldCut, fieldGrid } from '../belts/field-cut.ts';
import { CUT_SHARE } from '../belts/years-to-protect.ts';
import { shelterScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { ShelterRequest } from '../wind/shelter-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';

const CELLS_ACROSS = 24;

/** How the wind is read. */
export type WindReading = Pick<ShelterRequest, 'readingHeightM' | 'galeMps' | 'options'>;

/** By how much a whole field's wind is cut in the growing season, everything that stands acting. */
export async function runFieldCut(
  runner: JobRunner,
  document: SiteDocument,
  options: SceneOptions,
  field: FieldFeature,
  reading: WindReading,
  run: RunOptions = {},
): Promise<FieldCut> {
  const { grid, mask } = fieldGrid(field, options.frame, CELLS_ACROSS);
  const { scene } = shelterScene(document, options);
  const result = await runner.run('shelter', { ...reading, scene, grid }, { signal: run.signal });
  return fieldCut(result, mask, CUT_SHARE);
}
