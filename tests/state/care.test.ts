import { describe, expect, it } from 'vitest';
import { featureById } from '../../src/site/find-feature.ts';
import type { CareRecord } from '../../src/site/records/care.ts';
import type { Woody } from '../../src/site/woody.ts';
import {
  careGroups,
  careWording,
  cautionsOf,
  effectOfCare,
  firstWinter,
  usualCare,
} from '../../src/state/care.ts';
import { careEffectWords } from '../../src/state/care-effect-words.ts';
import { at, feature, line, siteOf } from '../site/small-site.ts';

const tree = (id: string, east: number, north: number, species: string) =>
  feature(id, { kind: 'tree', species, plantedYear: 2027, status: 'planned' }, at(east, north));
const document = siteOf([
  ...[0, 4, 8, 12].map((east, i) => tree(`a${i}`, east, 0, 'Alnus glutinosa')),
  tree('far', 100, 60, 'Alnus glutinosa'),
  tree('grey', 50, 50, 'Alnus incana'),
  tree('nut', 60, 10, 'Juglans regia'),
  feature('b', { kind: 'belt', species: 'Picea abies', heightM: 12 }, line([0, 30], [40, 30])),
]);
const of = (id: string) => featureById(document, id) as Woody;

describe('plants that are cared for in one step', () => {
  it('are one, its row, its species, and all that serve the same', () => {
    expect(careGroups(document, null, of('a1')).map(({ label, ids }) => [label, ids.length])).toEqual([
      ['this tree alone', 1],
      ['the 4 trees of its row', 4],
      ['every common alder tree, 5', 5],
      ['every nurse tree, 6', 6],
    ]);
    expect(careGroups(document, null, of('nut')).map(({ value }) => value)).toEqual(['one']);
    expect(careGroups(document, null, of('b')).map(({ label }) => label)).toEqual(['this belt alone']);
  });
});

describe('what care does, in words', () => {
  const words = (id: string, care: CareRecord, year = 20) =>
    careEffectWords(effectOfCare(document, of(id), care, null)!, [care], {
      year,
      baseYear: 2027,
      length: careWording(undefined, 'metric').length,
    });

  it('says the height with and without, and how tall it gets', () => {
    expect(words('a1', { what: 'coppice', year: 2034, everyYears: 7 })).toMatch(
      /^In year 20 it is [\d.]+ m tall \([\d.]+ m to [\d.]+ m\) instead of [\d.]+ m\. From 2034 to 2067 it is at most [\d.]+ m tall\.$/,
    );
    expect(words('a1', { what: 'coppice', year: 2060 })).toMatch(/tall \(.*\), as without care\. From 2060/);
  });

  it('says where there is nothing left, and what does not show in a height', () => {
    expect(words('b', { what: 'coppice', year: 2034 })).toBe('In year 20 its place is empty.');
    expect(words('a1', { what: 'thin', year: 2034, share: 0.2 })).toContain(
      'as without care. Raising and thinning',
    );
  });
});

describe('what the form starts with', () => {
  it('is usual for the height that it has by then, and once it is planted', () => {
    expect(firstWinter(document, of('a1'), 0)).toBe(2028);
    expect(firstWinter(document, of('a1'), 12)).toBe(2039);
    expect(usualCare(document, of('a1'), 'pollard', 2045)).toEqual({
      what: 'pollard',
      year: 2045,
      heightM: 2.5,
      everyYears: 5,
    });
    const raised = usualCare(document, of('a1'), 'raiseCrown', 2030);
    expect(cautionsOf(document, of('a1'), raised)).toEqual([]);
  });

  it('comes with the cautions of what is planted', () => {
    const nuts = cautionsOf(document, of('a1'), { what: 'replace', year: 2040, species: 'Juglans regia' });
    expect(nuts.join(' ')).toContain('allergic');
  });
});
