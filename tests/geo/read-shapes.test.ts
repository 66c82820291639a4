// @vitest-environment node
import { describe, expect, it } from 'vitest';
import { readShapes } from '../../src/geo/formats/read-shapes.ts';
import { textBytes } from './files.ts';

const kml = `<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2"><Document><name>all</name><Folder>
<Placemark><name> Upper Lea </name><Polygon><outerBoundaryIs><LinearRing><coordinates>
-64.5,45.1,12 -64.499,45.1,12 -64.499,45.101,12 -64.5,45.1,12</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>
<Placemark><MultiGeometry><Point><coordinates>-64.5,45.1</coordinates></Point>
<LineString><coordinates>-64.5,45.1 -64.5,45.1 -64.49,45.1</coordinates></LineString></MultiGeometry></Placemark>
</Folder></Document></kml>`;

const gpx = `<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">
<wpt lat="45.1" lon="-64.5"><name>gate</name></wpt>
<trk><name>walk</name><trkseg><trkpt lat="45.1" lon="-64.5"><ele>3</ele></trkpt><trkpt lat="45.2" lon="-64.4"/></trkseg>
<trkseg><trkpt lat="45.3" lon="-64.5"/><trkpt lat="45.4" lon="-64.4"/></trkseg></trk></gpx>`;

const collection = (features: unknown[], more: object = {}) =>
  JSON.stringify({ type: 'FeatureCollection', features, ...more });
const square = [
  [-64.5, 45.1],
  [-64.4, 45.1],
  [-64.4, 45.2],
  [-64.5, 45.2],
  [-64.5, 45.1],
];

describe('shapes from a file', () => {
  it('KML: polygons lose their heights and keep their names, several parts come apart', () => {
    const shapes = readShapes('a.kml', textBytes(kml));
    expect(shapes.map((shape) => [shape.geometry.type, shape.name])).toEqual([
      ['Polygon', 'Upper Lea'],
      ['Point', null],
      ['LineString', null],
    ]);
    expect(shapes[0].geometry.coordinates).toEqual([
      [
        [-64.5, 45.1],
        [-64.499, 45.1],
        [-64.499, 45.101],
        [-64.5, 45.1],
      ],
    ]);
    expect(shapes[2].geometry.coordinates).toEqual([
      [-64.5, 45.1],
      [-64.49, 45.1],
    ]);
  });

  it('GPX: waypoints and every segment of a track', () => {
    const shapes = readShapes('a.gpx', textBytes(gpx));
    expect(shapes.map((shape) => [shape.geometry.type, shape.name]).sort()).toEqual([
      ['LineString', 'walk'],
      ['LineString', 'walk'],
      ['Point', 'gate'],
    ]);
  });

  it('GeoJSON: collections, features and bare geometries', () => {
    const polygon = { type: 'Polygon', coordinates: [square] };
    const feature = { type: 'Feature', properties: { name: 'Pound Field' }, geometry: polygon };
    const expected = [{ geometry: polygon, name: 'Pound Field' }];
    const empty = { ...feature, geometry: null };
    expect(readShapes('a.json', textBytes(collection([feature, empty])))).toEqual(expected);
    expect(readShapes('a.json', textBytes(JSON.stringify(feature)))).toEqual(expected);
    expect(readShapes('a.json', textBytes(JSON.stringify(polygon)))).toEqual([
      { geometry: polygon, name: null },
    ]);
    const two = { type: 'MultiPolygon', coordinates: [[square], [square]] };
    expect(readShapes('a.json', textBytes(JSON.stringify(two)))).toHaveLength(2);
  });

  it('GeoJSON of the older format in a UTM zone is turned into degrees', () => {
    const crs = { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::32620' } };
    const point = {
      type: 'Feature',
      properties: {},
      geometry: { type: 'Point', coordinates: [381982.9075, 4995153.6277] },
    };
    const [shape] = readShapes('a.json', textBytes(collection([point], { crs })));
    const [lonDeg, latDeg] = shape.geometry.coordinates as number[];
    expect(lonDeg).toBeCloseTo(-64.5, 7);
    expect(latDeg).toBeCloseTo(45.1, 7);
    expect(() =>
      readShapes('a.json', textBytes(collection([point], { crs: { properties: { name: 'EPSG:99999' } } }))),
    ).toThrow(/^a\.json: its coordinate system \(EPSG:99999\)/);
  });

  it('tells formats by their content, whatever the name and the encoding', () => {
    const utf16 = new Uint8Array(new Uint16Array([0xfeff, ...[...gpx].map((c) => c.charCodeAt(0))]).buffer);
    expect(readShapes('boundary.txt', utf16.buffer as ArrayBuffer)).toHaveLength(3);
    expect(readShapes('x', textBytes(`\uFEFF${kml}`))).toHaveLength(3);
    const latin = Uint8Array.from(kml.replace('UTF-8', 'ISO-8859-1').replace('Upper Lea', 'Pr\xe9'), (c) =>
      c.charCodeAt(0),
    );
    expect(readShapes('x.kml', latin.buffer as ArrayBuffer)[0].name).toBe('Pré');
    const undeclared = Uint8Array.from(gpx.replace('gate', 'entr\xe9e'), (c) => c.charCodeAt(0));
    expect(readShapes('x.gpx', undeclared.buffer as ArrayBuffer).map((shape) => shape.name)).toContain(
      'entrée',
    );
  });
});

describe('files that cannot be imported give one sentence', () => {
  it.each([
    ['', /^f: the file is empty/],
    ['plain words', /^f: this is none of KML, GPX and GeoJSON/],
    ['PK\u0003\u0004rest', /^f: this is a packed file/],
    ['{"type":"FeatureCollection","features":[', /^f: this is not JSON, or it is cut short/],
    ['{"a":1}', /^f: this is JSON but not GeoJSON/],
    ['[1,2]', /^f: this is JSON but not GeoJSON/],
    [kml.slice(0, 300), /^f: this is not a KML file/],
    [gpx.slice(0, 200), /^f: this is not a GPX file/],
    ['<kml xmlns="http://www.opengis.net/kml/2.2"></kml>', /^f: no point, line or area/],
    [collection([]), /^f: no point, line or area/],
    [
      collection([
        { type: 'Feature', properties: { name: 'low' }, geometry: { type: 'Point', coordinates: [5, 95] } },
      ]),
      /^f, "low": the position 5, 95 is not a longitude/,
    ],
    [
      collection([{ type: 'Feature', properties: {}, geometry: { type: 'Polygon', coordinates: [5, 95] } }]),
      /^f, feature 1: its coordinates do not fit/,
    ],
    [
      collection([
        {
          type: 'Feature',
          properties: {},
          geometry: {
            type: 'LineString',
            coordinates: [
              ['a', 1],
              [2, 3],
            ],
          },
        },
      ]),
      /^f, feature 1: the position a, 1/,
    ],
    [collection([null]), /^f: no point, line or area/],
  ])('%#', (text, words) => {
    expect(() => readShapes('f', textBytes(text))).toThrow(words);
  });
});
