import type { CrownSet } from '../crowns/crown-set.ts';
import { type Steps, within } from '../numeric/steps.ts';
import { computeShelter } from './compute-shelter.ts';
import type { ShelterOnGridsRequest, ShelterResult } from './shelter-types.ts';

/** Shelter on several small grids of one scene, in their order, each from what acts there. */
export function* computeShelterOnGrids({
  places,
  ...request
}: ShelterOnGridsRequest): Steps<ShelterResult[]> {
  const results: ShelterResult[] = [];
  for (const { grid, without, trees } of places) {
    const barriers = request.scene.barriers.filter(({ thing }) => thing !== without);
    const crowns: CrownSet = trees ? request.scene.crowns : { ...request.scene.crowns, count: 0 };
    const steps = computeShelter({ ...request, grid, scene: { ...request.scene, barriers, crowns } });
    results.push(yield* within(steps, results.length / places.length, 1 / places.length));
  }
  return results;
}
