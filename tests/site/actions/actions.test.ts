import { describe, expect, it } from 'vitest';
import { azimuthDeg, distanceM, polygonAreaM2 } from '../../../src/geo/geodesic.ts';
import { addFeature } from '../../../src/site/actions/add-feature.ts';
import { addLayout } from '../../../src/site/actions/add-layout.ts';
import { copyLayout } from '../../../src/site/actions/copy-layout.ts';
import { deleteFeatures } from '../../../src/site/actions/delete-feature.ts';
import { deleteLayout } from '../../../src/site/actions/delete-layout.ts';
import { duplicateFeatures } from '../../../src/site/actions/duplicate-feature.ts';
import { moveFeatures, moveFeatureTo } from '../../../src/site/actions/move-feature.ts';
import { plantRow } from '../../../src/site/actions/plant-row.ts';
import { renameLayout } from '../../../src/site/actions/rename-layout.ts';
import { reshapeFeature } from '../../../src/site/actions/reshape-feature.ts';
import { setProperties } from '../../../src/site/actions/set-properties.ts';
import { setSite } from '../../../src/site/actions/set-site.ts';
import { takeField } from '../../../src/site/actions/take-field.ts';
import type { FeatureOf, Kind, SiteDocument } from '../../../src/site/document.ts';
import { featureById } from '../../../src/site/find-feature.ts';
import { at, box, line, oneOfEach } from '../small-site.ts';

const get = <K extends Kind>(document: SiteDocument, id: string, _kind: K) =>
  featureById(document, id) as FeatureOf<K>;
const lonLat = (position: readonly number[]): [number, number] => [position[0], position[1]];

describe('moving', () => {
  it('goes the asked metres to the true east and north', () => {
    const before = oneOfEach();
    const after = moveFeatures(before, ['t1'], 30, -40);
    const [from, to] = [before, after].map((d) => lonLat(get(d, 't1', 'tree').geometry.coordinates));
    expect(distanceM(from, to)).toBeCloseTo(50, 6);
    expect(azimuthDeg(from, to)).toBeCloseTo((Math.atan2(30, -40) * 180) / Math.PI, 4);
  });

  it('keeps the size and the form of a field, 2 km away', () => {
    const before = oneOfEach();
    const after = moveFeatures(before, ['f1'], 0, 2000);
    const [a, b] = [before, after].map((d) => get(d, 'f1', 'field').geometry.coordinates[0].map(lonLat));
    expect(polygonAreaM2([b]) / polygonAreaM2([a])).toBeCloseTo(1, 6);
    for (let i = 1; i < a.length; i++)
      expect(distanceM(b[i - 1], b[i])).toBeCloseTo(distanceM(a[i - 1], a[i]), 4);
  });

  it('carries a shape by the place at which it is held', () => {
    const after = moveFeatureTo(oneOfEach(), 'f1', at(60, 45), at(50, 40));
    const [lon, lat] = get(after, 'f1', 'field').geometry.coordinates[0][0];
    expect(distanceM([lon, lat], at(10, 5))).toBeLessThan(0.01);
    const tree = get(moveFeatureTo(oneOfEach(), 't1', at(1, 2)), 't1', 'tree').geometry.coordinates;
    expect(distanceM(lonLat(tree), at(1, 2))).toBeLessThan(1e-6);
  });

  it('keeps heights that positions carry', () => {
    const before = reshapeFeature(oneOfEach(), 't1', { type: 'Point', coordinates: [...at(0, 0), 31] });
    expect(get(moveFeatures(before, ['t1'], 5, 5), 't1', 'tree').geometry.coordinates[2]).toBe(31);
  });
});

describe('adding, copying and deleting', () => {
  it('gives a drawn feature a free id and leaves the old document as it was', () => {
    const before = oneOfEach();
    const { document, id } = addFeature(before, {
      properties: { kind: 'patch', name: 'Mint' },
      geometry: { type: 'Polygon', coordinates: box(1, 1, 5, 5) },
    });
    expect(id).toBe('patch-1');
    expect(document.features).toHaveLength(before.features.length + 1);
    expect(before).toEqual(oneOfEach());
  });

  it('refuses what is not sound and names it', () => {
    expect(() =>
      addFeature(oneOfEach(), {
        properties: { kind: 'tree', heightM: -1 },
        geometry: { type: 'Point', coordinates: at(0, 0) },
      }),
    ).toThrow('tree "tree-1": heightM is -1; expected a number above 0 (metres).');
  });

  it('copies a tree beside itself with the next tag, and a field that is not taken', () => {
    const { document, ids } = duplicateFeatures(oneOfEach(), ['t1', 'f1'], 5, 0);
    const tree = get(document, String(ids[0]), 'tree');
    expect(tree.properties).toEqual({ ...get(oneOfEach(), 't1', 'tree').properties, tag: 'N3' });
    expect(distanceM(lonLat(tree.geometry.coordinates), at(55, 40))).toBeLessThan(0.01);
    expect(get(document, String(ids[1]), 'field').properties).toEqual({ kind: 'field', name: 'Pound Field' });
  });

  it('deletes what was named and nothing else', () => {
    const after = deleteFeatures(oneOfEach(), ['t1', 'b1']);
    expect(after.features.map((f) => f.id)).not.toContain('t1');
    expect(after.features).toHaveLength(oneOfEach().features.length - 2);
    expect(() => deleteFeatures(after, ['t1'])).toThrow('Feature "t1" is not in the site');
  });
});

describe('properties', () => {
  it('are set for several features at once, and removed by undefined', () => {
    const after = setProperties(oneOfEach(), ['t1', 't2'], {
      rootstock: 'own',
      crownBaseM: undefined,
      kind: 'belt',
    });
    for (const id of ['t1', 't2']) {
      const { properties } = get(after, id, 'tree');
      expect(properties.kind).toBe('tree');
      expect(properties.rootstock).toBe('own');
      expect('crownBaseM' in properties).toBe(false);
    }
  });

  it('are refused with one sentence', () => {
    expect(() => setProperties(oneOfEach(), ['t1'], { crownBaseM: 7 })).toThrow(
      'tree "t1": crownBaseM is 7; expected less than its heightM, 6 (metres).',
    );
  });

  it('of the site are set, removed and checked', () => {
    const after = setSite(oneOfEach(), { terrainPlane: { fallDeg: 4, towardDeg: 135 }, layouts: undefined });
    expect(after.site.terrainPlane?.fallDeg).toBe(4);
    expect('layouts' in after.site).toBe(false);
    expect(() => setSite(oneOfEach(), { baseYear: 20270 })).toThrow(
      'site.baseYear is 20270; expected a number of 2500 or less.',
    );
  });

  it('a reshaped feature must keep a shape of its kind', () => {
    expect(() =>
      reshapeFeature(oneOfEach(), 'b1', { type: 'Polygon', coordinates: box(0, 0, 1, 1) }),
    ).toThrow('belt "b1": geometry is Polygon; expected LineString for a belt.');
    const bow = line([0, 0], [10, 10], [10, 0], [0, 10], [0, 0]);
    expect(() => reshapeFeature(oneOfEach(), 'f1', { type: 'Polygon', coordinates: [bow] })).toThrow(
      'the boundary crosses itself',
    );
  });

  it('one field is taken at a time', () => {
    const after = takeField(oneOfEach(), 'f2');
    expect(get(after, 'f1', 'field').properties.taken).toBeUndefined();
    expect(get(after, 'f2', 'field').properties.taken).toBe(true);
    expect(
      takeField(after, null).features.some((f) => f.properties.kind === 'field' && f.properties.taken),
    ).toBe(false);
    expect(() => takeField(after, 't1')).toThrow('Feature "t1" is a tree; expected a field to be taken.');
  });
});

describe('a row of trees', () => {
  it('is numbered on from its first tag', () => {
    const { document, ids } = plantRow(
      oneOfEach(),
      line([0, 0], [24, 0]),
      { spacingM: 6, fit: 'given' },
      { tag: 'N', species: 'Prunus avium', status: 'planned', plantedYear: 2028 },
    );
    expect(ids.map((id) => get(document, String(id), 'tree').properties.tag)).toEqual([
      'N3',
      'N4',
      'N5',
      'N6',
      'N7',
    ]);
    expect(get(document, String(ids[0]), 'tree').properties.species).toBe('Prunus avium');
  });
});

describe('layouts', () => {
  it('are added, copied with what belongs to them, renamed and deleted', () => {
    const copied = copyLayout(oneOfEach(), 'A', 'C');
    expect(copied.site.layouts?.map((l) => l.name)).toEqual(['A', 'B', 'C']);
    const own = (d: SiteDocument, name: string) => d.features.filter((f) => f.properties.layout === name);
    expect(own(copied, 'C')).toHaveLength(1);
    expect(own(copied, 'C')[0].id).not.toBe('t2');
    const renamed = renameLayout(copied, 'A', 'Open ring');
    expect(own(renamed, 'Open ring').map((f) => f.id)).toEqual(['t2']);
    const deleted = deleteLayout(renamed, 'Open ring');
    expect(deleted.features.some((f) => f.id === 't2')).toBe(false);
    expect(deleted.features.some((f) => f.id === 't1')).toBe(true);
    expect(deleted.site.layouts?.map((l) => l.name)).toEqual(['B', 'C']);
  });

  it('have names of their own', () => {
    expect(() => addLayout(oneOfEach(), ' A ')).toThrow('there is one named "A" already');
    expect(() => addLayout(oneOfEach(), '')).toThrow('the name is empty');
    expect(() => deleteLayout(oneOfEach(), 'Z')).toThrow('expected one of "A", "B".');
  });
});
