import { describe, expect, it } from 'vitest';
import { parseSite } from '../../src/site/parse-site.ts';
import { serialiseSite } from '../../src/site/serialise-site.ts';
import { at, box, feature, oneOfEach, siteOf } from './small-site.ts';

const reopened = (text: string) => parseSite(text, 'x.site.geojson');

describe('saving and opening', () => {
  it('gives the same document and the same text again', () => {
    const text = serialiseSite(oneOfEach());
    const { document, notes } = reopened(text);
    expect(notes).toEqual([]);
    expect(serialiseSite(document)).toBe(text);
    expect(document.features.map((f) => f.properties)).toEqual(oneOfEach().features.map((f) => f.properties));
  });

  it('keeps unknown members everywhere, and features of unknown kinds', () => {
    const tree = feature('t1', { kind: 'tree', mistletoe: { seen: [2025, 2026] } }, at(0, 0));
    const file = {
      ...siteOf(
        [
          { ...tree, drone: 7, geometry: { ...tree.geometry, accuracyM: 0.3 } },
          { type: 'Feature', id: 9, properties: { kind: 'beehive', hives: 3 }, geometry: null, extra: true },
          { type: 'Feature', properties: null, geometry: { type: 'Point', coordinates: [1, 2] } },
        ],
        {
          club: { members: 40 },
          wind: { sectors: [{ fromDeg: 0, frequency: 1, meanSpeedMps: 4, gauge: 'mast' }], from: 'mast' },
          layouts: [{ name: 'A', note: 'first idea' }],
        },
      ),
      licence: 'CC0',
      bbox: [0, 0, 1, 1],
    };
    const { document, notes } = reopened(JSON.stringify(file));
    expect(notes).toEqual(['2 features are kept but not used (kind "beehive", no kind).']);
    const again = JSON.parse(serialiseSite(document));
    expect(again.licence).toBe('CC0');
    expect(again.site).toEqual(file.site);
    expect(again.features[0].drone).toBe(7);
    expect(again.features[0].geometry.accuracyM).toBe(0.3);
    expect(again.features[0].properties).toEqual(file.features[0].properties);
    expect(again.features.slice(1)).toEqual(file.features.slice(1));
    // A box is not kept but renewed: it would be wrong after the first edit.
    expect(again.bbox).toEqual([-64.5, 2, 1, 45.1]);
  });

  it('gives features without an id one that is stable and free', () => {
    const file = JSON.stringify(
      siteOf([
        feature('tree-1', { kind: 'tree' }, at(0, 0)),
        feature(undefined, { kind: 'tree' }, at(1, 0)),
        feature(undefined, { kind: 'field' }, box(0, 0, 9, 9)),
        { ...feature(undefined, { kind: 'tree' }, at(2, 0)), id: null },
      ]),
    );
    const ids = () => reopened(file).document.features.map((f) => f.id);
    expect(ids()).toEqual(['tree-1', 'tree-2', 'field-1', 'tree-3']);
    expect(ids()).toEqual(ids());
    expect(reopened(file).notes).toEqual(['3 features had no id and were given one.']);
  });

  it('turns rings as RFC 7946 has it and rounds to 9 decimals', () => {
    const ring = [
      [0, 0],
      [0, 1],
      [1, 1],
      [1, 0],
      [0, 0],
    ];
    const hole = [
      [0.2, 0.2],
      [0.4, 0.2],
      [0.4, 0.4],
      [0.2, 0.1 + 0.2],
      [0.2, 0.2],
    ];
    const text = serialiseSite(siteOf([feature('f', { kind: 'field' }, [ring, hole])]));
    expect(JSON.parse(text).features[0].geometry.coordinates).toEqual([
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
        [0, 0],
      ],
      [
        [0.2, 0.2],
        [0.2, 0.3],
        [0.4, 0.4],
        [0.4, 0.2],
        [0.2, 0.2],
      ],
    ]);
  });

  it('reads the empty columns of a table program as absent, and a byte order mark as nothing', () => {
    const text = JSON.stringify(
      siteOf([
        feature('t', { kind: 'tree', heightM: null, species: null, strange: null, layout: null }, at(0, 0)),
      ]),
    );
    const { document } = reopened(`\ufeff${text}`);
    expect(document.features[0].properties).toEqual({ kind: 'tree', strange: null });
  });

  it('reads a shape of several parts that has only one as that one', () => {
    const field = feature('f', { kind: 'field' }, box(0, 0, 9, 9));
    const many = (parts: unknown[]) => ({ ...field, geometry: { type: 'MultiPolygon', coordinates: parts } });
    const one = reopened(JSON.stringify(siteOf([many([box(0, 0, 9, 9)])])));
    expect(one.document.features[0].geometry).toEqual(field.geometry);
    expect(one.notes).toHaveLength(1);
    expect(() => reopened(JSON.stringify(siteOf([many([box(0, 0, 9, 9), box(20, 0, 29, 9)])])))).toThrow(
      'geometry is MultiPolygon; expected Polygon for a field',
    );
  });

  it('writes the same member order whatever order was read', () => {
    const a = feature('t', { kind: 'tree', tag: 'N1', heightM: 3, z: 1 }, at(0, 0));
    const b = {
      geometry: a.geometry,
      properties: { z: 1, heightM: 3, tag: 'N1', kind: 'tree' },
      id: 't',
      type: 'Feature',
    };
    expect(serialiseSite(siteOf([b]))).toBe(serialiseSite(siteOf([a])));
  });
});
