import { describe, expect, it } from 'vitest';
import type { FeatureOf } from '../../src/site/document.ts';
import { featureById } from '../../src/site/find-feature.ts';
import { rowOfTree } from '../../src/site/row-of-tree.ts';
import { at, feature, siteOf } from './small-site.ts';

const tree = (id: string, east: number, north: number, species = 'Alnus cordata', layout?: string) =>
  feature(id, { kind: 'tree', species, ...(layout ? { layout } : {}) }, at(east, north));
const rowOf = (features: unknown[], id: string, layout: string | null = null) => {
  const document = siteOf(features);
  return rowOfTree(document, layout, featureById(document, id) as FeatureOf<'tree'>);
};
/** A row from a place along a direction. */
const row = (name: string, count: number, [east, north]: [number, number], [dx, dy]: [number, number]) =>
  Array.from({ length: count }, (_, i) => tree(`${name}${i}`, east + i * dx, north + i * dy));

describe('the row of a tree', () => {
  it('is found from any of its trees, from one end to the other', () => {
    const trees = row('a', 6, [0, 0], [4, 3]);
    for (const id of ['a0', 'a3', 'a5'])
      expect(rowOf(trees, id).toSorted()).toEqual(['a0', 'a1', 'a2', 'a3', 'a4', 'a5']);
  });

  it('goes round a gentle bend, and ends at a gap', () => {
    const bend = [0, 1, 2, 3, 4, 5, 6].map((i) => tree(`a${i}`, 30 * Math.sin(i / 6), 30 * Math.cos(i / 6)));
    expect(rowOf(bend, 'a3')).toHaveLength(7);
    const gap = [...row('a', 4, [0, 0], [5, 0]), ...row('b', 4, [30, 0], [5, 0])];
    expect(rowOf(gap, 'a1')).toHaveLength(4);
  });

  it('is that of the nearer neighbours where rows stand side by side', () => {
    const orchard = [0, 8, 16].flatMap((north, i) => row(`r${i}-`, 7, [0, north], [5, 0]));
    expect(rowOf(orchard, 'r1-3').every((id) => String(id).startsWith('r1-'))).toBe(true);
    expect(rowOf(orchard, 'r1-3')).toHaveLength(7);
  });

  it('leaves out other species and other layouts', () => {
    const trees = row('a', 5, [0, 0], [5, 0]);
    const mixed = [...trees.slice(0, 4), tree('walnut', 20, 0, 'Juglans regia'), trees[4]];
    expect(rowOf(mixed, 'a0')).not.toContain('walnut');
    const laid = trees.map((each, i) =>
      i < 3 ? each : { ...each, properties: { ...each.properties, layout: 'A' } },
    );
    expect(rowOf(laid, 'a0')).toHaveLength(3);
    expect(rowOf(laid, 'a0', 'A')).toHaveLength(5);
  });

  it('is none of two, of one, or of trees far apart', () => {
    expect(rowOf(row('a', 2, [0, 0], [5, 0]), 'a0')).toEqual([]);
    expect(rowOf(row('a', 1, [0, 0], [5, 0]), 'a0')).toEqual([]);
    expect(rowOf(row('a', 5, [0, 0], [40, 0]), 'a0')).toEqual([]);
  });
});
