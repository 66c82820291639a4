/** The plain shelter model's scattered trees: silhouettes summed in small squares, drag by the published equations. */
import type { Barrier } from '../../src/crowns/barrier.ts';
import type { ShelterRequest } from '../../src/wind/shelter-types.ts';
import { between, contains, partsOf } from './shelter-parts.ts';

export interface Tree {
  readonly at: readonly [number, number];
  readonly top: number;
  /** Silhouette, and what of it is closed in full leaf and leafless, m2. */
  readonly outline: number;
  readonly on: number;
  readonly off: number;
  readonly leafClass: number;
}

/** Silhouettes from the side, summed in small squares; of a tree over a barrier what rises above it. */
export function treesOf(
  { scene, options, readingHeightM }: ShelterRequest,
  standing: readonly Barrier[],
): Tree[] {
  const { crowns } = scene;
  const footprints = partsOf(standing).filter(
    ({ barrier }) => barrier.shape === 'area' || barrier.widthM > 0,
  );
  return Array.from({ length: crowns.count }, (_, i): Tree => {
    const [x, y, , base, top, radius, depthOn, depthOff] = crowns.values.subarray(8 * i, 8 * i + 8);
    const form = ['ellipsoid', 'dome', 'cone', 'cylinder'][crowns.form[i]];
    const covered = footprints
      .filter(({ outline }) => contains(outline, [x, y]))
      .reduce((most, { heights }) => Math.max(most, ...heights), 0);
    const young =
      options.youngBelts && readingHeightM > 0
        ? Math.min(1, Math.max(0, (top - readingHeightM) / readingHeightM))
        : 1;
    const sum = { outline: 0, on: 0, off: 0 };
    const steps = 200;
    const from = Math.max(base, covered);
    for (let j = 0; j < steps && from < top; j++) {
      const level = (between(from, top, (j + 0.5) / steps) - base) / (top - base);
      const round = { ellipsoid: 1 - (2 * level - 1) ** 2, dome: 1 - level ** 2, cone: (1 - level) ** 2 };
      const r = radius * Math.sqrt(round[form as keyof typeof round] ?? 1);
      for (let k = 0; k < steps; k++) {
        const area = (((top - from) / steps) * 2 * r) / steps;
        const chord = 2 * r * Math.sqrt(1 - ((2 * (k + 0.5)) / steps - 1) ** 2);
        sum.outline += young * area;
        sum.on += young * area * (1 - Math.exp(-depthOn * chord));
        sum.off += young * area * (1 - Math.exp(-depthOff * chord));
      }
    }
    return { at: [x, y], top, leafClass: crowns.leafClass[i], ...sum };
  }).filter(({ outline }) => outline > 0);
}

/** What is left of the wind on the ground at a roughness density: Raupach 1992 and 1994, lengths in tree heights. */
function raupach(density: number): number {
  const lambda = Math.min(0.5, density);
  const roughness = (l: number) => {
    const root = Math.sqrt(7.5 * 2 * l);
    const d = l > 0 ? 1 - (1 - Math.exp(-root)) / root : 0;
    const frictionOverSpeed = Math.min(0.3, Math.sqrt(0.003 + 0.3 * l));
    return { d, z0: (1 - d) * Math.exp(-0.4 / frictionOverSpeed + 0.193) };
  };
  const { d, z0 } = roughness(lambda);
  const rise = Math.log(10 / roughness(0).z0) / Math.log((10 - d) / z0);
  return Math.min(1, rise / Math.sqrt(1 + 100 * lambda));
}

/** Trees laid on nodes two mean heights apart along the wind, averaged over twenty heights upwind, read between nodes. */
export function shareAmongTrees(
  trees: readonly Tree[],
  at: readonly [number, number],
  up: readonly number[],
  leafShareOfClass: (leafClass: number) => number,
): number {
  if (trees.length === 0) return 1;
  const place = (p: readonly [number, number]) => [
    p[0] * up[1] - p[1] * up[0],
    -(p[0] * up[0] + p[1] * up[1]),
  ];
  const weight = trees.reduce((sum, tree) => sum + tree.outline, 0);
  const mean = (of: (tree: Tree) => number) =>
    trees.reduce((sum, tree) => sum + tree.outline * of(tree), 0) / weight;
  const places = trees.map((tree) => place(tree.at));
  const extent = [0, 1].map((axis) => {
    const all = places.map((p) => p[axis]);
    return Math.max(...all) - Math.min(...all);
  });
  const cell = Math.max(2 * mean(({ top }) => top), Math.max(...extent) / 96);
  const middle = place([mean((tree) => tree.at[0]), mean((tree) => tree.at[1])]);
  /** A square of one cell folded with itself twice. */
  const spline = (distance: number) => {
    const d = Math.abs(distance);
    return d < 0.5 ? 0.75 - d * d : 0.5 * (1.5 - d) ** 2;
  };
  const tent = (distance: number) => Math.max(0, 1 - Math.abs(distance));
  const densityAt = (column: number, row: number): number =>
    trees.reduce((sum, tree, i) => {
      const s = (places[i][0] - middle[0]) / cell - column;
      const t = (places[i][1] - middle[1]) / cell - row;
      if (Math.abs(s) >= 1.5 || Math.abs(t) >= 1.5) return sum;
      const leaf = leafShareOfClass(tree.leafClass);
      const open = (closed: number) => Math.max(0.01, 1 - closed / tree.outline);
      const mixed = open(tree.on) ** leaf * open(tree.off) ** (1 - leaf);
      return sum + (spline(s) * spline(t) * tree.outline * (1 - mixed)) / cell ** 2;
    }, 0);
  const deficitAt = (column: number, row: number): number => {
    let sum = 0;
    for (let m = 0; m < 10; m++) sum += (1 - m / 10) * densityAt(column, row - m);
    return 1 - raupach(sum / 5.5);
  };
  const here = place(at);
  const [column, row] = [(here[0] - middle[0]) / cell, (here[1] - middle[1]) / cell];
  const [c, r] = [Math.floor(column), Math.floor(row)];
  let deficit = 0;
  for (const i of [c, c + 1])
    for (const j of [r, r + 1]) {
      const share = tent(column - i) * tent(row - j);
      if (share > 0) deficit += share * deficitAt(i, j);
    }
  return 1 - deficit;
}
