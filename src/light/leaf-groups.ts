/**
 * Phases of the leaves drawn together where they hardly differ. While leaves come out every day is a phase of its
 * own; computing each would cost much and show little: a group holds phases in which no class that matters is further
 * than a tolerance from the group's first, and is computed with their weighted mean leaf share.
 */
import { CROWN_DEPTH_OFF, CROWN_DEPTH_ON, CROWN_STRIDE } from '../crowns/crown-set.ts';
import type { LeafPhases } from '../crowns/leaf-phases.ts';
import { PRISM_DEPTH_OFF, PRISM_DEPTH_ON, PRISM_STRIDE } from '../crowns/prism-set.ts';
import type { LightScene } from './light-types.ts';

/**
 * For the sun. Against no grouping, 200 crowns of three leaf classes, 2,025 cells: the worst month of the worst cell
 * moves by 0.6 % of open hours, the season's share of light by 0.00005.
 */
export const SUN_LEAF_TOLERANCE = 0.25;
/** For the sky, where the whole year is grouped at once. In the same scene: 0.010 of a month's share of light, 0.002 of the season's. */
export const SKY_LEAF_TOLERANCE = 0.45;

export interface LeafGroups {
  readonly count: number;
  /** Group of each entry of the list of phases given. */
  readonly groupOf: Uint8Array;
  /** Leaf share by group and class: group * classCount + class. */
  readonly leafShare: Float64Array;
}

/** 1 for each leaf class whose state changes what some thing of the scene lets through. */
export function classesThatMatter({ crowns, prisms, surroundings, leaf }: LightScene): Uint8Array {
  const matters = new Uint8Array(leaf.classCount);
  for (let i = 0; i < crowns.count; i++) {
    const v = i * CROWN_STRIDE;
    if (crowns.values[v + CROWN_DEPTH_ON] !== crowns.values[v + CROWN_DEPTH_OFF])
      matters[crowns.leafClass[i]] = 1;
  }
  for (let i = 0; i < prisms.count; i++) {
    const v = i * PRISM_STRIDE;
    if (!prisms.solid[i] && prisms.values[v + PRISM_DEPTH_ON] !== prisms.values[v + PRISM_DEPTH_OFF])
      matters[prisms.leafClass[i]] = 1;
  }
  if (surroundings && surroundings.depthOnPerM !== surroundings.depthOffPerM)
    matters[surroundings.leafClass] = 1;
  return matters;
}

/** @param phases which phases; @param weights how much each counts in its group's mean leaf share. */
export function groupPhases(
  leaf: LeafPhases,
  matters: Uint8Array,
  phases: ArrayLike<number>,
  weights: ArrayLike<number>,
  tolerance: number,
): LeafGroups {
  const { classCount, leafShare } = leaf;
  const groupOf = new Uint8Array(phases.length);
  const firstPhase: number[] = [];
  for (let k = 0; k < phases.length; k++) {
    const here = phases[k] * classCount;
    let group = firstPhase.findIndex((phase) => {
      for (let c = 0; c < classCount; c++)
        if (matters[c] && Math.abs(leafShare[phase * classCount + c] - leafShare[here + c]) > tolerance)
          return false;
      return true;
    });
    if (group < 0) group = firstPhase.push(phases[k]) - 1;
    groupOf[k] = group;
  }
  const shares = new Float64Array(firstPhase.length * classCount);
  const total = new Float64Array(firstPhase.length);
  for (let k = 0; k < phases.length; k++) {
    total[groupOf[k]] += weights[k];
    for (let c = 0; c < classCount; c++)
      shares[groupOf[k] * classCount + c] += weights[k] * leafShare[phases[k] * classCount + c];
  }
  for (let g = 0; g < firstPhase.length; g++)
    for (let c = 0; c < classCount; c++) {
      const i = g * classCount + c;
      shares[i] = total[g] > 0 ? shares[i] / total[g] : leafShare[firstPhase[g] * classCount + c];
    }
  return { count: firstPhase.length, groupOf, leafShare: shares };
}
