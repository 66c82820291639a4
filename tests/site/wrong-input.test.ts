import { describe, expect, it } from 'vitest';
import { parseSite } from '../../src/site/parse-site.ts';
import { PlainGeoJsonError } from '../../src/site/plain-geojson.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { at, box, feature, line, siteOf } from './small-site.ts';

function sentenceFor(text: string): string {
  try {
    parseSite(text, 'plan.site.geojson');
  } catch (error) {
    if (error instanceof BadInputError) return error.message;
    throw error;
  }
  return 'nothing was found wrong';
}
const withFeature = (one: unknown, site: Record<string, unknown> = {}) => JSON.stringify(siteOf([one], site));
const tree = (properties: Record<string, unknown>) =>
  feature('t1', { kind: 'tree', ...properties }, at(0, 0));
const field = (coordinates: unknown) => feature('f1', { kind: 'field' }, coordinates);
const whole = withFeature(field(box(0, 0, 10, 10)));

const CASES: Record<string, [string, string]> = {
  'an empty file': ['', 'plan.site.geojson: the file is empty; expected a site file (GeoJSON).'],
  'a file of blanks': [' \n\t', 'plan.site.geojson: the file is empty; expected a site file (GeoJSON).'],
  'a file that was cut short': [
    whole.slice(0, 200),
    'plan.site.geojson: the JSON breaks off in line 1, as if the file were cut short; expected a whole site file (GeoJSON).',
  ],
  'a file cut inside a number': [
    JSON.stringify(siteOf([]), null, 2).split('2027')[0],
    'plan.site.geojson: the JSON breaks off in line 7, as if the file were cut short; expected a whole site file (GeoJSON).',
  ],
  'JSON with a slip in it': [
    JSON.stringify(siteOf([]), null, 2).replace('"name":', '"name"'),
    'plan.site.geojson: the JSON is broken in line 5; expected a whole site file (GeoJSON).',
  ],
  'another kind of file': [
    'PK\u0003\u0004',
    'plan.site.geojson: the file is not JSON; expected a whole site file (GeoJSON).',
  ],
  'JSON that is a list': [
    '[1, 2]',
    'plan.site.geojson: the file is JSON but holds a list; expected a GeoJSON FeatureCollection.',
  ],
  'JSON that is not GeoJSON': [
    '{"name": "x"}',
    'plan.site.geojson: the file is JSON but not GeoJSON: its type is missing; expected "FeatureCollection" with a list of features.',
  ],
  'a collection whose features are no list': [
    '{"type": "FeatureCollection", "site": {}, "features": 3}',
    'plan.site.geojson: the file is JSON but not GeoJSON: its type is "FeatureCollection"; expected "FeatureCollection" with a list of features.',
  ],
  'a site record that is no object': [
    '{"type": "FeatureCollection", "site": 3, "features": []}',
    'plan.site.geojson: site is 3; expected an object with name, timeZone and baseYear.',
  ],
  'a list of species that is none': [
    withFeature(feature('b1', { kind: 'belt', alsoSpecies: 'Alnus incana' }, line([0, 0], [9, 0]))),
    'plan.site.geojson: belt "b1": alsoSpecies is "Alnus incana"; expected a list.',
  ],
  'another coordinate system': [
    JSON.stringify({
      ...siteOf([]),
      crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::27700' } },
    }),
    'plan.site.geojson: crs is "urn:ogc:def:crs:EPSG::27700"; expected WGS 84 longitude and latitude, as GeoJSON has it.',
  ],
  'a newer format': [
    JSON.stringify(siteOf([], { formatVersion: 7 })),
    'plan.site.geojson: site.formatVersion is 7; expected 1 or less, so open it with the newer Leeglade that wrote it.',
  ],
  'a time zone nobody knows': [
    JSON.stringify(siteOf([], { timeZone: 'Mars/North' })),
    'plan.site.geojson: site.timeZone is "Mars/North"; expected a time zone of the IANA list such as "America/Halifax".',
  ],
  'a wind from nowhere': [
    JSON.stringify(siteOf([], { wind: { sectors: [{ fromDeg: 400, frequency: 1, meanSpeedMps: 3 }] } })),
    'plan.site.geojson: site.wind.sectors[0].fromDeg is 400; expected a number of 360 or less.',
  ],
  'eleven months of sunshine': [
    JSON.stringify(siteOf([], { sunshineShareByMonth: Array(11).fill(0.4) })),
    'plan.site.geojson: site.sunshineShareByMonth is a list of 11; expected exactly 12 entries.',
  ],
  'a season in words': [
    JSON.stringify(siteOf([], { growingSeason: { firstDay: 'April', lastDay: '09-30' } })),
    'plan.site.geojson: site.growingSeason.firstDay is "April"; expected a month and day such as 04-01.',
  ],
  'a day that no month has': [
    JSON.stringify(siteOf([], { growingSeason: { firstDay: '02-31', lastDay: '09-30' } })),
    'plan.site.geojson: site.growingSeason.firstDay is "02-31"; expected a month and day such as 04-01.',
  ],
  'two layouts of one name': [
    JSON.stringify(siteOf([], { layouts: [{ name: 'A' }, { name: 'A' }] })),
    'plan.site.geojson: site.layouts has "A" twice; expected different names.',
  ],
  'a feature that is none': [
    JSON.stringify(siteOf([3])),
    'plan.site.geojson: features[0] is 3; expected a GeoJSON Feature.',
  ],
  'latitude 95': [
    withFeature(feature('t1', { kind: 'tree' }, [-64.5, 95])),
    'plan.site.geojson: tree "t1": geometry.coordinates[1] is 95; expected a latitude from -90 to 90 (WGS 84 degrees, longitude first; are longitude and latitude swapped?).',
  ],
  'metres of a map grid': [
    withFeature(feature('t1', { kind: 'tree' }, [381000, 4995000])),
    'plan.site.geojson: tree "t1": geometry.coordinates[0] is 381000; expected a longitude from -180 to 180 (WGS 84 degrees; these look like metres of a map grid).',
  ],
  'a latitude inside a path': [
    withFeature(
      feature('x1', { kind: 'path' }, [
        [0, 0],
        [0, 95],
      ]),
    ),
    'plan.site.geojson: path "x1": geometry.coordinates[1][1] is 95; expected a latitude from -90 to 90 (WGS 84 degrees, longitude first; are longitude and latitude swapped?).',
  ],
  'a negative height': [
    withFeature(tree({ heightM: -3 })),
    'plan.site.geojson: tree "t1": heightM is -3; expected a number above 0 (metres).',
  ],
  'a height in words': [
    withFeature(tree({ heightM: '6 m' })),
    'plan.site.geojson: tree "t1": heightM is "6 m"; expected a number (metres).',
  ],
  'a crown base above its top': [
    withFeature(tree({ heightM: 6, crownBaseM: 8 })),
    'plan.site.geojson: tree "t1": crownBaseM is 8; expected less than its heightM, 6 (metres).',
  ],
  'a belt that is all gap': [
    withFeature(feature('b1', { kind: 'belt', heightM: 3, baseHeightM: 3 }, line([0, 0], [9, 0]))),
    'plan.site.geojson: belt "b1": baseHeightM is 3; expected less than its heightM, 3 (metres).',
  ],
  'a porosity in percent': [
    withFeature(feature('b1', { kind: 'belt', opticalPorosityLeafOn: 40 }, line([0, 0], [9, 0]))),
    'plan.site.geojson: belt "b1": opticalPorosityLeafOn is 40; expected a number of 1 or less (a share of 1, not percent).',
  ],
  'a crown form nobody draws': [
    withFeature(tree({ crownForm: 'umbrella' })),
    'plan.site.geojson: tree "t1": crownForm is "umbrella"; expected one of "ellipsoid", "dome", "cone", "cylinder".',
  ],
  'half a year': [
    withFeature(tree({ plantedYear: 2027.5 })),
    'plan.site.geojson: tree "t1": plantedYear is 2027.5; expected a whole number (a calendar year).',
  ],
  'a boundary that crosses itself': [
    withFeature(
      field([
        [
          [0, 0],
          [2, 2],
          [2, 0],
          [0, 2],
          [0, 0],
        ],
      ]),
    ),
    'plan.site.geojson: field "f1": geometry: the boundary crosses itself at 1, 1; expected a closed line that meets itself only at its ends.',
  ],
  'a hole that crosses itself': [
    withFeature(
      field([
        [
          [0, 0],
          [9, 0],
          [9, 9],
          [0, 9],
          [0, 0],
        ],
        [
          [1, 1],
          [3, 3],
          [3, 1],
          [1, 3],
          [1, 1],
        ],
      ]),
    ),
    'plan.site.geojson: field "f1": geometry: hole 1 crosses itself at 2, 2; expected a closed line that meets itself only at its ends.',
  ],
  'a boundary without area': [
    withFeature(
      field([
        [
          [0, 0],
          [1, 1],
          [0, 0],
          [0, 0],
        ],
      ]),
    ),
    'plan.site.geojson: field "f1": geometry: the boundary has no area at 0, 0; expected at least three corners that are not in one line.',
  ],
  'a boundary left open': [
    withFeature(
      field([
        [
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 1],
        ],
      ]),
    ),
    'plan.site.geojson: field "f1": geometry: the boundary is not closed at 0, 1; expected the last position to repeat the first.',
  ],
  'a tree drawn as a line': [
    withFeature(feature('t1', { kind: 'tree' }, line([0, 0], [1, 1]))),
    'plan.site.geojson: tree "t1": geometry is LineString; expected Point for a tree.',
  ],
  'a path drawn as a point': [
    withFeature(feature('x1', { kind: 'path' }, at(0, 0))),
    'plan.site.geojson: path "x1": geometry is Point; expected LineString or Polygon for a path.',
  ],
  'a tree without a place': [
    withFeature({ type: 'Feature', id: 't1', properties: { kind: 'tree' }, geometry: null }),
    'plan.site.geojson: tree "t1": geometry is missing; expected Point for a tree.',
  ],
  'a belt of one point': [
    withFeature({
      ...feature('b1', { kind: 'belt' }, line([0, 0], [1, 1])),
      geometry: { type: 'LineString', coordinates: [at(0, 0)] },
    }),
    'plan.site.geojson: belt "b1": geometry.coordinates is a list of 1; expected at least 2 entries.',
  ],
  'one id for two': [
    JSON.stringify(
      siteOf([feature('1', { kind: 'tree' }, at(0, 0)), feature(1, { kind: 'tree' }, at(5, 0))]),
    ),
    'plan.site.geojson: feature 1: id is given to two features; expected each id once.',
  ],
};

describe('wrong input', () => {
  for (const [what, [text, sentence]] of Object.entries(CASES))
    it(`says one clear sentence about ${what}`, () => {
      const found = sentenceFor(text);
      expect(found).toBe(sentence);
      expect(found).not.toContain('\n');
    });

  it('offers plain GeoJSON for import instead', () => {
    const plain = { type: 'FeatureCollection', features: [feature('a', { kind: 'field' }, box(0, 0, 1, 1))] };
    for (const geojson of [plain, plain.features[0], plain.features[0].geometry])
      expect(() => parseSite(JSON.stringify(geojson), 'walk.geojson')).toThrow(PlainGeoJsonError);
    expect(sentenceFor(JSON.stringify(plain))).toBe(
      'plan.site.geojson: the file is GeoJSON without a site record; expected a member "site", or import its shapes as fields, belts or paths.',
    );
  });

  it('refuses a text too long to be a site file', () => {
    expect(sentenceFor(' '.repeat(65e6))).toBe(
      'plan.site.geojson: the file has 65 million characters; expected a site file of less than 64 million.',
    );
  });

  it('takes a clear stem higher than the young tree that is planned', () => {
    const whip = {
      heightM: 1.2,
      crownBaseM: 1.8,
      species: 'Malus domestica',
      status: 'planned',
      plantedYear: 2028,
    };
    expect(sentenceFor(withFeature(tree(whip)))).toBe('nothing was found wrong');
    expect(sentenceFor(withFeature(tree({ ...whip, status: 'existing' })))).toContain('crownBaseM is 1.8');
  });
});
