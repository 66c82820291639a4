import { CLAY, INK, LEAF, LEAF_WASH, SOFT_INK, STONE, WATER } from './inks.ts';
import type { Stroke } from './page-model.ts';
import type { PlanPageInput, PlanTree } from './plan-input.ts';

/** How one kind of thing is drawn, on the map and in the legend alike. */
export interface Sign {
  readonly words: string;
  readonly fill?: string;
  readonly solid?: true;
  readonly stroke: Stroke;
  /** Closed outline, line or crown. */
  readonly shape: 'area' | 'line' | 'crown';
}

export const SIGNS = {
  field: {
    words: 'field',
    shape: 'area',
    stroke: { ink: INK, widthMm: 0.45, dashMm: [3, 1.2] },
  },
  belt: { words: 'belt', shape: 'area', fill: LEAF_WASH, stroke: { ink: LEAF, widthMm: 0.3 } },
  plannedBelt: {
    words: 'belt, planned',
    shape: 'area',
    fill: LEAF_WASH,
    stroke: { ink: LEAF, widthMm: 0.3, dashMm: [1.6, 0.9] },
  },
  block: { words: 'wood or block', shape: 'area', fill: '#c3d4c2', stroke: { ink: LEAF, widthMm: 0.45 } },
  building: {
    words: 'building',
    shape: 'area',
    solid: true,
    fill: '#cfccc3',
    stroke: { ink: INK, widthMm: 0.4 },
  },
  wall: {
    words: 'wall, fence or net',
    shape: 'area',
    solid: true,
    fill: STONE,
    stroke: { ink: INK, widthMm: 0.2 },
  },
  patch: {
    words: 'patch of understorey',
    shape: 'area',
    stroke: { ink: INK, widthMm: 0.4, dashMm: [0.4, 1.1] },
  },
  path: { words: 'path', shape: 'line', stroke: { ink: SOFT_INK, widthMm: 0.35, dashMm: [2, 0.8] } },
  keepOut: {
    words: 'kept free, services',
    shape: 'line',
    stroke: { ink: CLAY, widthMm: 0.35, dashMm: [3, 0.8, 0.5, 0.8] },
  },
  contour: { words: 'contour, metres', shape: 'line', stroke: { ink: WATER, widthMm: 0.13 } },
  nut: { words: 'nut tree', shape: 'crown', stroke: { ink: INK, widthMm: 0.6 } },
  fruit: { words: 'fruit tree', shape: 'crown', stroke: { ink: INK, widthMm: 0.3 } },
  nurse: {
    words: 'nurse tree',
    shape: 'crown',
    stroke: { ink: INK, widthMm: 0.3, dashMm: [1, 0.7] },
  },
  other: { words: 'tree', shape: 'crown', stroke: { ink: SOFT_INK, widthMm: 0.3 } },
} satisfies Record<string, Sign>;

export type SignName = keyof typeof SIGNS;

export const signOfTree = (tree: PlanTree): SignName => tree.role;

/** The signs that this plan uses, in the legend's order. */
export function signsUsed(input: PlanPageInput): SignName[] {
  const used = new Set<SignName>(input.trees.map(signOfTree));
  if (input.fields.length > 0) used.add('field');
  for (const belt of input.belts) used.add(belt.planned ? 'plannedBelt' : 'belt');
  if (input.blocks.length > 0) used.add('block');
  if (input.buildings.length > 0) used.add('building');
  if (input.walls.length > 0) used.add('wall');
  if (input.patches.length > 0) used.add('patch');
  if (input.paths.length > 0) used.add('path');
  if (input.keepOuts.length > 0) used.add('keepOut');
  if (input.ground) used.add('contour');
  return (Object.keys(SIGNS) as SignName[]).filter((name) => used.has(name));
}
