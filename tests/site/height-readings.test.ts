import { describe, expect, it } from 'vitest';
import { forgetHeight, startFromNewest, takeHeight } from '../../src/site/actions/take-height.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { featureById } from '../../src/site/find-feature.ts';
import { behindReadings, heightReadings } from '../../src/site/height-readings.ts';
import { seasonPosition } from '../../src/site/season-position.ts';
import { feature, line, at as place, siteOf } from './small-site.ts';

const treeOf = (document: SiteDocument) => featureById(document, 't1').properties as Record<string, unknown>;
const tree = (properties: object) => feature('t1', { kind: 'tree', ...properties }, place(50, 50));
const planted = () =>
  siteOf([tree({ status: 'planned', species: 'Alnus cordata', plantedYear: 2020, heightM: 1.2 })]);

describe('where a day lies among the growing seasons', () => {
  it('is the end of a season all winter, and a share of it in summer, north', () => {
    const at = (date: string) => seasonPosition({}, 45, date);
    expect(at('2030-10-01')).toBe(2030);
    expect(at('2031-02-14')).toBe(2030);
    expect(at('2031-03-31')).toBe(2030);
    expect(at('2031-07-01')).toBeCloseTo(2030.5, 1);
    expect(at('2031-12-31')).toBe(2031);
  });

  it('counts a season for the year in which it begins, south', () => {
    const at = (date: string) => seasonPosition({}, -43.6, date);
    expect(at('2030-09-30')).toBe(2029);
    expect(at('2030-12-31')).toBeCloseTo(2029.5, 1);
    expect(at('2031-04-01')).toBe(2030);
  });

  it('is the same half a year apart on the other half of the earth', () => {
    for (const [north, south] of [
      ['2031-04-20', '2031-10-20'],
      ['2031-08-11', '2032-02-10'],
    ])
      expect(seasonPosition({}, -45, south)).toBeCloseTo(seasonPosition({}, 45, north), 1);
  });

  it('goes by the season that the site gives', () => {
    const growingSeason = { firstDay: '05-01', lastDay: '08-31' };
    expect(seasonPosition({ growingSeason }, 60, '2031-04-30')).toBe(2030);
    expect(seasonPosition({ growingSeason }, 60, '2031-09-01')).toBe(2031);
  });
});

describe('a measured height', () => {
  it('is kept as a reading, is what the plant grows on from, and leaves its height at planting', () => {
    const after = takeHeight(planted(), 't1', {
      heightM: 7.43,
      measuredYear: 2026,
      date: '2026-10-03',
      method: 'by a stick',
    });
    expect(treeOf(after)).toMatchObject({
      heightM: 7.4,
      measuredYear: 2026,
      plantedYear: 2020,
      plantedHeightM: 1.2,
    });
    expect(heightReadings(after).get('t1')).toMatchObject([
      { heightM: 7.4, date: '2026-10-03', position: 2026, year: 2026, method: 'by a stick' },
    ]);
  });

  it('does not take the place of a newer one, and keeps one that was typed before', () => {
    const typed = siteOf([tree({ plantedYear: 2015, heightM: 5, measuredYear: 2022 })]);
    const newer = takeHeight(typed, 't1', { heightM: 8, measuredYear: 2026 });
    expect(
      heightReadings(newer)
        .get('t1')
        ?.map(({ heightM, year }) => [year, heightM]),
    ).toEqual([
      [2022, 5],
      [2026, 8],
    ]);
    const older = takeHeight(newer, 't1', { heightM: 3, measuredYear: 2019 });
    expect(treeOf(older)).toMatchObject({ heightM: 8, measuredYear: 2026 });
    expect(heightReadings(older).get('t1')).toHaveLength(3);
    expect(behindReadings(older, null)).toEqual([]);
  });

  it('is forgotten again: the one before it counts, and at last the height at planting', () => {
    const once = takeHeight(planted(), 't1', { heightM: 4, measuredYear: 2023 });
    const twice = takeHeight(once, 't1', { heightM: 40, measuredYear: 2026 });
    const [first, second] = heightReadings(twice).get('t1')!;
    const back = forgetHeight(twice, 't1', second.measure!);
    expect(treeOf(back)).toMatchObject({ heightM: 4, measuredYear: 2023, plantedHeightM: 1.2 });
    const atFirst = forgetHeight(back, 't1', first.measure!);
    expect(atFirst.features).toHaveLength(1);
    expect(treeOf(atFirst)).toEqual(treeOf(planted()));
  });

  it('that only the file holds is told of, and taken when asked for', () => {
    const document = siteOf([
      tree({ plantedYear: 2015, heightM: 5, measuredYear: 2022 }),
      feature(
        'm1',
        { kind: 'measure', quantity: 'height', of: 't1', value: 9, date: '2027-03-01' },
        place(50, 50),
      ),
    ]);
    expect(behindReadings(document, null)).toMatchObject([{ newest: { heightM: 9, year: 2026 } }]);
    const after = startFromNewest(document, 't1');
    expect(treeOf(after)).toMatchObject({ heightM: 9, measuredYear: 2026 });
    expect(behindReadings(after, null)).toEqual([]);
  });

  it('of a building or wall is its height and no more', () => {
    const wall = siteOf([feature('t1', { kind: 'wall' }, line([0, 0], [40, 0]))]);
    const after = takeHeight(wall, 't1', { heightM: 2.5, measuredYear: 2026 });
    expect(after.features).toHaveLength(1);
    expect(treeOf(after)).toMatchObject({ heightM: 2.5 });
  });
});
