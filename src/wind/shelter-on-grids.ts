import { type Steps, within } from '../numeric/steps.ts';
import { computeShelter } from './compute-shelter.ts';
import type { ShelterOnGridsRequest, ShelterResult } from './shelter-types.ts';

/** Shelter on several small grids of one scene, in their order, on each without the thing that does not act there. */
export function* computeShelterOnGrids({
  places,
  ...request
}: ShelterOnGridsRequest): Steps<ShelterResult[]> {
  const results: ShelterResult[] = [];
  for (const { grid, without } of places) {
    const barriers = request.scene.barriers.filter(({ thing }) => thing !== without);
    const steps = computeShelter({ ...request, grid, scene: { ...request.scene, barriers } });
    results.push(yield* within(steps, results.length / places.length, 1 / places.length));
  }
  return results;
}
