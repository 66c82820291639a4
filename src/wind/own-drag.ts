import { CROWN_STRIDE, type CrownSet } from '../crowns/crown-set.ts';
import { USUAL_FINENESS } from './fineness.ts';
import { LANES } from './kernel/assembly/layout.ts';
import { startShelterKernel } from './kernel/kernel.ts';
import { looseTrees } from './loose-trees.ts';
import { shelterSeasons } from './shelter-phases.ts';
import { acrossWind, alongWind, windRay } from './shelter-tile.ts';
import type { ShelterRequest } from './shelter-types.ts';
import { grove, type TreeRoom, takeTreeRoom, treeField } from './tree-field.ts';

/** Any wind: it is the same from every side. */
const RAY = windRay(0);

/**
 * What each single tree takes off the wind of the growing season at its own place if it stood alone, 0 to 1: the same
 * from every side. By crown, in their order; 0 for what is no taller than the reading height.
 */
export function ownDrag({ scene, readingHeightM, options }: Omit<ShelterRequest, 'grid'>): Float64Array {
  const { crowns, leaf, growingDay } = scene;
  const drag = new Float64Array(crowns.count);
  if (!options.scatteredTrees) return drag;
  const kernel = startShelterKernel();
  let room: TreeRoom | null = null;
  for (let i = 0; i < crowns.count; i++) {
    const alone = looseTrees(crownAlone(crowns, i), [], readingHeightM, options);
    const { phases } = shelterSeasons(leaf, growingDay, [], alone, USUAL_FINENESS.leafStates);
    const own = grove(alone, phases);
    const [tree] = alone;
    if (!tree) continue;
    room ??= takeTreeRoom(kernel, own);
    for (let first = 0; first < phases.length; first += LANES) {
      const beside = phases.slice(first, first + LANES);
      const spec = treeField(kernel, room, own, RAY, beside);
      if (!spec) break;
      // The field is laid out about the tree: it stands at a node.
      const column = Math.round((acrossWind(RAY, tree.xM, tree.yM) - spec.firstAcrossM) / spec.cellM);
      const row = Math.round((alongWind(RAY, tree.xM, tree.yM) - spec.firstAlongM) / spec.cellM);
      const at = room.field / 4;
      beside.forEach(({ growingWeight }, lane) => {
        drag[i] += growingWeight * kernel.floats[at + (row * spec.across + column) * LANES + lane];
      });
    }
  }
  return drag;
}

const crownAlone = (crowns: CrownSet, i: number): CrownSet => ({
  count: 1,
  values: crowns.values.subarray(i * CROWN_STRIDE, (i + 1) * CROWN_STRIDE),
  form: crowns.form.subarray(i, i + 1),
  leafClass: crowns.leafClass.subarray(i, i + 1),
  thing: crowns.thing.subarray(i, i + 1),
});
