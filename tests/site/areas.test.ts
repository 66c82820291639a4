import { describe, expect, it } from 'vitest';
import { polygonAreaM2 } from '../../src/geo/geodesic.ts';
import {
  chosenFeatures,
  computeArea,
  featuresOfKind,
  fieldNamed,
  takenField,
} from '../../src/site/chosen-features.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { patchAreas } from '../../src/site/patch-areas.ts';
import { at, box, feature, line, oneOfEach, siteOf } from './small-site.ts';

const areaM2 = (patches: ReturnType<typeof patchAreas>): number =>
  patches.flatMap((patch) => patch.polygons).reduce((sum, rings) => sum + polygonAreaM2(rings), 0);
const open = (document: SiteDocument, layout: string | null = null) =>
  patchAreas(document, layout, featuresOfKind(document.features, 'field'));

describe('what is chosen', () => {
  it('is what all layouts share and what belongs to the one', () => {
    const ids = (layout: string | null) => chosenFeatures(oneOfEach(), layout).map((f) => f.id);
    expect(ids('A')).toContain('t2');
    expect(ids('B')).not.toContain('t2');
    expect(ids(null)).not.toContain('t2');
    expect(ids('B')).toContain('t1');
  });

  it('is a field by its name or id', () => {
    expect(fieldNamed(oneOfEach(), 'upper lea').id).toBe('f2');
    expect(fieldNamed(oneOfEach(), 'f1').id).toBe('f1');
    expect(() => fieldNamed(oneOfEach(), 'Nowhere')).toThrow(
      'Field: there is none named "Nowhere"; expected one of "Pound Field", "Upper Lea".',
    );
    expect(takenField(oneOfEach())?.id).toBe('f1');
  });

  it('covers the fields, or one, or everything where there is no field', () => {
    expect(computeArea(oneOfEach()).fields.map((f) => f.id)).toEqual(['f1', 'f2']);
    expect(computeArea(oneOfEach(), { field: 'Upper Lea' }).places).toHaveLength(5);
    const twoTrees = siteOf([
      feature('a', { kind: 'tree' }, at(0, 0)),
      feature('b', { kind: 'tree', layout: 'A' }, at(5, 0)),
    ]);
    expect(computeArea(twoTrees).places).toEqual([at(0, 0)]);
    expect(computeArea(twoTrees, { layout: 'A' }).places).toHaveLength(2);
    expect(() => computeArea(siteOf([]))).toThrow('nothing is drawn on it');
  });
});

describe('patches', () => {
  it('are those drawn on the fields, with the light each is to keep', () => {
    const [patch, ...rest] = open(oneOfEach());
    expect(rest).toEqual([]);
    expect(patch).toMatchObject({
      id: 'p1',
      name: 'Currants',
      readingHeightM: 1,
      lightShareToKeep: 0.4,
      implicit: false,
    });
  });

  it('are the open ground where none is drawn: less belt, block, building, path and ground kept free', () => {
    const field = feature('f', { kind: 'field', name: 'Lea' }, box(0, 0, 100, 100));
    const whole = open(siteOf([field]));
    expect(whole[0]).toMatchObject({ id: 'open-ground-f', name: 'Open ground of Lea', implicit: true });
    expect(areaM2(whole)).toBeCloseTo(10_000, 0);
    const taken = [
      feature('b', { kind: 'belt', widthM: 4 }, line([10, 10], [10, 60])), // 200 m2, flat ends
      feature('w', { kind: 'block' }, box(80, 80, 120, 120)), // 400 m2 of it on the field
      feature('h', { kind: 'building' }, box(40, 40, 50, 50)), // 100
      feature('x', { kind: 'path', offsetM: 1 }, line([0, 70], [100, 70])), // 200
      feature('k', { kind: 'keepOut' }, box(90, 0, 100, 10)), // 100
      feature('s', { kind: 'service', offsetM: 3 }, line([0, 5], [50, 5])), // takes no ground
      feature('t', { kind: 'tree', heightM: 5 }, at(30, 30)), // nor does a tree
    ];
    // 0.5 m2 of room for the scale of the map grid (0.04 %).
    expect(Math.abs(areaM2(open(siteOf([field, ...taken]))) - (10_000 - 1000))).toBeLessThan(0.5);
  });

  it('count what belongs to the layout alone, and a path that cuts the field leaves two pieces', () => {
    const field = feature('f', { kind: 'field' }, box(0, 0, 100, 100));
    const path = feature('x', { kind: 'path', layout: 'A', offsetM: 1 }, line([-5, 50], [105, 50]));
    const site = siteOf([field, path]);
    expect(open(site, 'A')[0].polygons).toHaveLength(2);
    expect(open(site, 'B')[0].polygons).toHaveLength(1);
  });

  it('round a bend count a belt once', () => {
    const field = feature('f', { kind: 'field' }, box(0, 0, 100, 100));
    const belt = feature('b', { kind: 'belt', widthM: 4 }, line([10, 10], [10, 60], [60, 60]));
    // Two legs of 50 m, less the overlap inside the bend (4 m2), plus the quarter disc outside it (pi m2).
    expect(10_000 - areaM2(open(siteOf([field, belt])))).toBeCloseTo(400 - 4 + Math.PI, 0);
  });

  it('are none where nothing of the field is left', () => {
    const site = siteOf([
      feature('f', { kind: 'field' }, box(0, 0, 10, 10)),
      feature('w', { kind: 'block' }, box(-5, -5, 20, 20)),
    ]);
    expect(open(site)).toEqual([]);
  });
});
