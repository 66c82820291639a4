import { describe, expect, it } from 'vitest';
import { careWords } from '../../src/site/care-words.ts';
import { checkSite } from '../../src/site/check-site.ts';
import type { CheckContext } from '../../src/site/checks/problem.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import type { CareRecord } from '../../src/site/records/care.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { at, box, feature, line, siteOf } from './small-site.ts';

describe('care in words', () => {
  const wording = { length: (m: number) => `${m} m`, plant: (name: string) => name.toLowerCase() };
  const cases: [CareRecord, string][] = [
    [{ what: 'coppice', year: 2034, everyYears: 7 }, 'Coppice in 2034, then every 7 years'],
    [
      { what: 'pollard', year: 2034, heightM: 2.5, everyYears: 1, lastYear: 2060 },
      'Pollard at 2.5 m in 2034, then every year until 2060',
    ],
    [{ what: 'raiseCrown', year: 2034, heightM: 3 }, 'Raise the crown to 3 m in 2034'],
    [{ what: 'cutTo', year: 2034, heightM: 6 }, 'Cut to 6 m in 2034'],
    [{ what: 'thin', year: 2034, share: 0.2 }, 'Thin by 20 % in 2034'],
    [{ what: 'replace', year: 2034 }, 'Fell and plant the same again in 2034'],
    [{ what: 'replace', year: 2034, species: 'Quince' }, 'Fell and plant quince in 2034'],
    [{ what: 'die', year: 2034 }, 'Dies or is felled in 2034'],
  ];
  it.each(cases)('%o', (care, words) => expect(careWords(care, wording)).toBe(words));
});

describe('wrong care in a file', () => {
  const sentenceFor = (care: unknown): string => {
    try {
      const tree = feature('t1', { kind: 'tree', care }, at(0, 0));
      parseSite(JSON.stringify(siteOf([tree])), 'plan.site.geojson');
    } catch (error) {
      if (error instanceof BadInputError) return error.message;
      throw error;
    }
    return 'nothing was found wrong';
  };
  const kinds = 'expected one of pollard, coppice, raiseCrown, cutTo, thin, replace and die.';
  const cases: [unknown, string][] = [
    [[{ what: 'prune', year: 2030 }], `care[0].what is "prune"; ${kinds}`],
    [[{ year: 2030 }], `care[0].what is missing; ${kinds}`],
    [[{ what: 'pollard', year: 2030 }], 'care[0].heightM is missing; expected a number (metres).'],
    [[{ what: 'coppice' }], 'care[0].year is missing; expected a number.'],
    [[{ what: 'thin', year: 2030, share: 30 }], 'care[0].share is 30; expected a number of 1 or less.'],
    [
      [{ what: 'coppice', year: 2030, everyYears: 0 }],
      'care[0].everyYears is 0; expected a number of 1 or more.',
    ],
    [[{ what: 'die', year: 2030, everyYears: 3 }], 'care[0].everyYears is 3; expected nothing.'],
    [{ what: 'coppice', year: 2030 }, 'care is an object; expected a list.'],
    [['coppice'], 'care[0] is "coppice"; expected an object.'],
  ];
  it.each(cases)('%o', (care, sentence) =>
    expect(sentenceFor(care)).toBe(`plan.site.geojson: tree "t1": ${sentence}`),
  );
});

describe('checking care', () => {
  const context: CheckContext = {
    knowsSpecies: (name) => ({
      known: name !== 'Juglans rega',
      suggestion: 'Juglans regia',
      matureHeightM: name === 'Corylus avellana' ? 5 : 20,
      shootsAgain: name !== 'Picea abies',
    }),
  };
  const found = (properties: object, care: CareRecord[]) => {
    const field = feature('f', { kind: 'field' }, box(0, 0, 100, 100));
    const tree = feature('t', { kind: 'tree', ...properties, care }, at(50, 50));
    return checkSite(siteOf([field, tree]), context).map(({ level, sentence }) => `${level}: ${sentence}`);
  };
  const planted = { species: 'Alnus cordata', status: 'planned', plantedYear: 2030 };

  it('finds nothing wrong with what is usual', () => {
    expect(
      found(planted, [
        { what: 'raiseCrown', year: 2034, heightM: 2 },
        { what: 'pollard', year: 2040, heightM: 2.5, everyYears: 7, lastYear: 2090 },
        { what: 'replace', year: 2091, species: 'Corylus avellana' },
        { what: 'coppice', year: 2099 },
      ]),
    ).toEqual([]);
  });

  it('finds care before planting, also where only the plan says when', () => {
    expect(found(planted, [{ what: 'coppice', year: 2030 }])).toEqual([
      'problem: tree "t": care[0].year is 2030 (coppice); expected a year after its plantedYear, 2030, so nothing is done then.',
    ]);
    expect(
      found({ species: 'Alnus cordata', status: 'planned' }, [{ what: 'coppice', year: 2027 }])[0],
    ).toContain('expected a year after the year the plan starts, 2027');
  });

  it('finds care after it is gone', () => {
    expect(found({ ...planted, removedYear: 2050 }, [{ what: 'coppice', year: 2050 }])).toEqual([
      'problem: tree "t": care[0].year is 2050 (coppice); expected a year before its removedYear, 2050, so nothing is done then.',
    ]);
    const died: CareRecord[] = [
      { what: 'die', year: 2040 },
      { what: 'coppice', year: 2045 },
    ];
    expect(found(planted, died)).toEqual([
      'problem: tree "t": care[1].year is 2045 (coppice); expected a year before it dies, 2040, so nothing is done then.',
    ]);
    expect(found(planted, [...died, { what: 'replace', year: 2042 }])).toEqual([]);
    expect(found(planted, [died[0], { what: 'replace', year: 2042 }])).toEqual([]);
  });

  it('finds cuts above anything it grows to, by the species that stands there then', () => {
    expect(found(planted, [{ what: 'pollard', year: 2040, heightM: 22 }])).toEqual([
      'problem: tree "t": care[0].heightM is 22 (pollard); expected less than it ever grows, 20 (metres), so nothing is cut.',
    ]);
    const measured = { species: 'Alnus cordata', heightM: 25 };
    expect(found(measured, [{ what: 'pollard', year: 2040, heightM: 22 }])).toEqual([]);
    const replaced: CareRecord[] = [
      { what: 'replace', year: 2040, species: 'Corylus avellana' },
      { what: 'cutTo', year: 2050, heightM: 6 },
    ];
    expect(found(planted, replaced)[0]).toContain(
      'care[1].heightM is 6 (cutTo); expected less than it ever grows, 5',
    );
  });

  it('finds a last year before the first, or one that ends nothing', () => {
    expect(found(planted, [{ what: 'coppice', year: 2040, everyYears: 7, lastYear: 2039 }])).toEqual([
      'problem: tree "t": care[0].lastYear is 2039; expected its year, 2040, or later, so nothing is done.',
    ]);
    expect(found(planted, [{ what: 'coppice', year: 2040, lastYear: 2050 }])).toEqual([
      'note: tree "t": care[0].lastYear is 2050 but everyYears is missing; without it it is done once, in 2040.',
    ]);
  });

  it('names a species nobody knows', () => {
    expect(found(planted, [{ what: 'replace', year: 2040, species: 'Juglans rega' }])).toEqual([
      'problem: tree "t": care[0].species is "Juglans rega"; expected a botanical name of the catalogue or of the site\'s own species, so what is planted does not grow; did you mean "Juglans regia"?',
    ]);
  });

  it('notes what is the end of a conifer', () => {
    expect(found({ species: 'Picea abies', heightM: 9 }, [{ what: 'coppice', year: 2040 }])).toEqual([
      'note: tree "t": care[0].what is "coppice", but Picea abies does not shoot again; it counts as its end.',
    ]);
  });

  it('looks at belts and blocks as well', () => {
    const care: CareRecord[] = [{ what: 'thin', year: 2020, share: 0.2 }];
    const belt = feature('b', { kind: 'belt', plantedYear: 2025, heightM: 2, care }, line([0, 0], [0, 50]));
    const block = feature('w', { kind: 'block', removedYear: 2019, heightM: 9, care }, box(0, 0, 9, 9));
    const sentences = checkSite(siteOf([belt, block]), {}).map(({ sentence }) => sentence);
    expect(sentences).toContain(
      'belt "b": care[0].year is 2020 (thin); expected a year after its plantedYear, 2025, so nothing is done then.',
    );
    expect(sentences).toContain(
      'block "w": care[0].year is 2020 (thin); expected a year before its removedYear, 2019, so nothing is done then.',
    );
  });
});
