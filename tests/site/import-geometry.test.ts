import { describe, expect, it } from 'vitest';
import { importShapes, likelyKind } from '../../src/site/import-geometry.ts';
import { at, box, line, siteOf } from './small-site.ts';

const empty = siteOf([]);

describe('shapes of other files', () => {
  it('become features of the chosen kind, named as they were', () => {
    const shapes = [{ type: 'Polygon', coordinates: box(0, 0, 9, 9), name: 'Long Acre' }];
    const { document, ids, notes } = importShapes(empty, shapes, 'field', 'walk.kml');
    expect(ids).toEqual(['field-1']);
    expect(document.features[0].properties).toEqual({ kind: 'field', name: 'Long Acre' });
    expect(notes).toEqual([]);
  });

  it('are taken apart where they are manifold', () => {
    const shapes = [
      { type: 'MultiPolygon', coordinates: [box(0, 0, 9, 9), box(20, 0, 29, 9)], name: 'Twin' },
    ];
    const { document } = importShapes(empty, shapes, 'field', 'walk.kml', 'A');
    expect(document.features.map((f) => [f.properties.name, f.properties.layout])).toEqual([
      ['Twin', 'A'],
      ['Twin 2', 'A'],
    ]);
  });

  it('a walked track is closed for a field, with a note of the gap', () => {
    const track = { type: 'LineString', coordinates: line([0, 0], [50, 0], [50, 40], [0, 5]) };
    const { document, notes } = importShapes(empty, [track], 'field', 'walk.gpx');
    expect(document.features[0].geometry.type).toBe('Polygon');
    expect(notes).toEqual(['shape 1: the line was closed by a straight side of 5.0 m.']);
  });

  it('an area gives its outline to a belt and stays an area for a path', () => {
    const area = { type: 'Polygon', coordinates: box(0, 0, 9, 9), name: 'Edge' };
    expect(importShapes(empty, [area], 'belt', 'x').document.features[0].geometry.type).toBe('LineString');
    expect(importShapes(empty, [area], 'path', 'x').document.features[0].geometry.type).toBe('Polygon');
  });

  it('what does not fit is left out with a note; when nothing fits that is said', () => {
    const shapes = [
      { type: 'Point', coordinates: at(0, 0), name: 'Gate' },
      { type: 'LineString', coordinates: line([0, 0], [9, 0]), name: 'Hedge' },
    ];
    const { ids, notes } = importShapes(empty, shapes, 'belt', 'walk.gpx');
    expect(ids).toHaveLength(1);
    expect(notes).toEqual([
      'Left out: walk.gpx: belt "Gate": geometry is Point; expected LineString for a belt.',
    ]);
    expect(() => importShapes(empty, shapes.slice(0, 1), 'belt', 'walk.gpx')).toThrow('geometry is Point');
    expect(() => importShapes(empty, [], 'field', 'walk.gpx')).toThrow('the file holds no shapes');
  });

  it('suggest a kind', () => {
    expect(likelyKind([{ type: 'MultiLineString', coordinates: [line([0, 0], [1, 0])] }])).toBe('belt');
    expect(
      likelyKind([
        { type: 'Point', coordinates: at(0, 0) },
        { type: 'Polygon', coordinates: box(0, 0, 1, 1) },
      ]),
    ).toBe('field');
  });
});
