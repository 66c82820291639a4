import { describe, expect, it } from 'vitest';
import { checkSite } from '../../src/site/check-site.ts';
import type { CheckContext } from '../../src/site/checks/problem.ts';
import { at, box, feature, line, siteOf } from './small-site.ts';

const field = feature('f', { kind: 'field', name: 'Lea' }, box(0, 0, 100, 100));
const sentences = (features: unknown[], site = {}, context: CheckContext = {}) =>
  checkSite(siteOf([field, ...features], site), context).map(
    ({ level, sentence }) => `${level}: ${sentence}`,
  );
const tree = (properties: object, east = 50, north = 50) =>
  feature('t', { kind: 'tree', heightM: 5, ...properties }, at(east, north));
const belt = (properties: object = {}) =>
  feature('b', { kind: 'belt', heightM: 8, widthM: 4, ...properties }, line([10, 0], [10, 100]));

describe('checking a site', () => {
  it('finds nothing on a sound one', () => {
    expect(sentences([tree({}), belt()])).toEqual([]);
  });

  it('names a species nobody knows, and what was probably meant', () => {
    const context: CheckContext = {
      knowsSpecies: (name) => ({
        known: name === 'Juglans regia',
        suggestion: name.startsWith('Jug') ? 'Juglans regia' : null,
      }),
    };
    expect(sentences([tree({ species: 'Juglans regia' })], {}, context)).toEqual([]);
    expect(sentences([tree({ species: 'Juglans rega' })], {}, context)).toEqual([
      'problem: tree "t": species is "Juglans rega"; expected a botanical name of the catalogue or of the site\'s own species, so it does not grow; did you mean "Juglans regia"?',
    ]);
    expect(sentences([belt({ species: 'Glass' })], {}, context)[0]).toMatch(/does not grow\.$/);
    expect(
      sentences([belt({ species: 'Juglans regia', alsoSpecies: ['Juglans regia', 'Jugla'] })], {}, context),
    ).toEqual([
      'problem: belt "b": alsoSpecies[1] is "Jugla"; expected a botanical name of the catalogue or of the site\'s own species, so nothing is known of it; did you mean "Juglans regia"?',
    ]);
    expect(sentences([belt({ alsoSpecies: ['Juglans regia'] })], {}, context)).toEqual([
      'note: belt "b": alsoSpecies is given without species; the main one belongs there, for the belt grows by it.',
    ]);
    expect(sentences([tree({ heightM: undefined, status: 'planned' })])).toEqual([
      'note: tree "t": species is missing; without one it does not grow.',
    ]);
  });

  it('finds a tree inside a belt or a wood, in the same layout alone', () => {
    expect(sentences([belt(), tree({ tag: 'N1' }, 11.5)])[0]).toContain(
      'tree "t" (N1): it stands inside belt "b"',
    );
    expect(sentences([belt(), tree({}, 12.5)])).toEqual([]);
    expect(
      sentences([belt({ layout: 'A' }), tree({ layout: 'B' }, 11)], {
        layouts: [{ name: 'A' }, { name: 'B' }],
      }),
    ).toEqual([]);
    const wood = feature('w', { kind: 'block', heightM: 9 }, box(40, 40, 60, 60));
    expect(sentences([wood, tree({})])[0]).toContain('it stands inside block "w"');
  });

  it('finds a belt through a building, and trees in one', () => {
    const house = feature('h', { kind: 'building', name: 'Barn' }, box(5, 40, 20, 50));
    const found = sentences([belt(), house, tree({ heightM: 1 }, 15, 45)]);
    expect(found).toContain('problem: belt "b": it runs through building "h" (Barn); expected it outside.');
    expect(found).toContain('problem: tree "t": it stands inside building "h" (Barn); expected it outside.');
  });

  it('tells which trees reach a building or an overhead line, now or full-grown, and defers', () => {
    const house = feature('h', { kind: 'building' }, box(60, 45, 70, 55));
    const wire = feature('s', { kind: 'service', reason: 'overhead line' }, line([0, 80], [100, 80]));
    const context: CheckContext = { knowsSpecies: () => ({ known: true, matureHeightM: 18 }) };
    const found = sentences([house, wire, tree({ tag: 'N1', heightM: 12 })], {}, context);
    expect(found).toEqual([
      'note: building "h": 1 tree is already taller than the distance to it (N1); local codes and licensed people say what to keep free and whether a tree is sound.',
    ]);
    expect(
      sentences([house, wire, tree({ tag: 'N1', species: 'X', heightM: 5 }, 50, 65)], {}, context),
    ).toEqual([
      'note: building "h": 1 tree is taller when full-grown than the distance to it (N1); local codes and licensed people say what to keep free and whether a tree is sound.',
      'note: service "s": 1 tree is taller when full-grown than the distance to it (N1); local codes and licensed people say what to keep free and whether a tree is sound.',
    ]);
  });

  it('finds years that contradict each other', () => {
    expect(sentences([tree({ plantedYear: 2030, removedYear: 2030 })])).toEqual([
      'problem: tree "t": plantedYear is 2030; expected a year before its removedYear, 2030, so it never stands.',
    ]);
    expect(sentences([tree({ plantedYear: 2030, measuredYear: 2020 })])[0]).toContain('measuredYear is 2020');
    expect(sentences([tree({ status: 'planned', species: 'X', plantedYear: 2020 })])[0]).toContain(
      'before the year the plan starts, 2027',
    );
    expect(
      sentences([feature('n', { kind: 'wall', fromYear: 2030, toYear: 2029 }, line([0, 0], [9, 0]))])[0],
    ).toContain('so it never stands');
    expect(sentences([tree({ heightM: undefined, measuredYear: 2026 })])).toHaveLength(2);
  });

  it('finds crowns that start above an assumed top, and sizes in the wrong unit', () => {
    expect(
      sentences([tree({ heightM: undefined, crownBaseM: 1.8, status: 'planned', species: 'X' })]),
    ).toEqual([]);
    expect(sentences([tree({ heightM: undefined, crownBaseM: 7 })])[0]).toBe(
      'problem: tree "t": crownBaseM is 7 but heightM is missing; without it the top is taken to be at 6 m.',
    );
    expect(sentences([tree({ heightM: 650 })])[0]).toBe(
      'note: tree "t": heightM is 650; expected 120 or less (height): is the unit right?',
    );
    expect(sentences([tree({ crownRadiusM: 11 })])[0]).toContain('is it the diameter');
  });

  it('finds what lies where it should not', () => {
    const found = sentences([
      feature('p', { kind: 'patch' }, box(200, 0, 220, 20)),
      feature('x', { kind: 'path', offsetM: 1 }, line([0, 50], [100, 50])),
      tree({ status: 'planned', species: 'X' }, 50, 50.5),
      feature('far', { kind: 'tree', heightM: 3 }, [-60, 45.1]),
      feature('f2', { kind: 'field', taken: true }, box(0, 200, 50, 250)),
      feature('f3', { kind: 'field', taken: true }, box(0, 300, 50, 350)),
    ]);
    expect(found[0]).toMatch(/^problem: tree "far": it lies 354 km from field "f" \(Lea\)/);
    expect(found[1]).toContain('taken is true for each; expected one field to be taken.');
    expect(found).toContain('note: patch "p": it lies outside every field.');
    expect(found).toContain(
      'note: tree "t": it is planned on path "x" or within the distance kept free from it.',
    );
    expect(checkSite(siteOf([tree({})]))[0].sentence).toContain('No field is drawn');
    expect(checkSite(siteOf([]))).toEqual([]);
  });

  it('finds files that are not at hand, still winds, and layouts not listed', () => {
    const site = {
      terrainFile: 'ground.tif',
      weatherFile: 'year.epw',
      spotLevels: [{ lonLat: [0, 0], elevationM: 1 }],
      wind: { sectors: [{ fromDeg: 0, frequency: 0, meanSpeedMps: 3 }] },
    };
    expect(sentences([tree({ layout: 'C' })], site, { filesAtHand: ['year.epw'] })).toEqual([
      'problem: site.terrainFile is "ground.tif", which is not at hand; expected the file beside the site file.',
      'problem: site.wind.sectors have no frequency above 0; expected the share of time of each direction.',
      'problem: site.spotLevels is a list of 1; expected at least 3, so the plane or flat ground is used.',
      'note: site.layouts does not name "C", to which features belong; expected it in the list.',
    ]);
  });
});
