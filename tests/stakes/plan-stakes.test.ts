import { describe, expect, test } from 'vitest';
import { distanceM } from '../../src/geo/geodesic.ts';
import { planStakes } from '../../src/stakes/plan-stakes.ts';
import { LONGEST_M } from '../../src/stakes/stake-plan.ts';
import { beside, boxAround, documentOf, HERE, POINTED, stakedSite, thing } from './staked-site.ts';

const wish = { date: '2027-06-21', times: null, longestM: LONGEST_M, line: null };
const withTree = (more: readonly unknown[] = [], site: Record<string, unknown> = {}) =>
  stakedSite(documentOf([thing('t1', 'Point', beside(HERE, 20, 10), POINTED), ...more], site));

describe('stakes for a day', () => {
  test('are the full hours of the site’s own clock, with the shadow shortest near solar noon', () => {
    const { stakes, date, timeZone } = planStakes(withTree(), 't1', wish);
    expect([date, timeZone]).toEqual(['2027-06-21', 'America/Halifax']);
    expect(stakes.map(({ time }) => time)).toContain('09:00');
    const shortest = stakes.reduce((best, stake) =>
      stake.fromFoot.levelM < best.fromFoot.levelM ? stake : best,
    );
    // 64.5° W on daylight saving time (UTC-3): the sun is highest at 13:20.
    expect(shortest.time).toBe('13:00');
  });

  test('are found again by their offsets and by two tapes', () => {
    const site = withTree();
    const { stakes, line } = planStakes(site, 't1', wish);
    for (const stake of stakes) {
      expect(distanceM(line.a.lonLat, stake.lonLat)).toBeCloseTo(stake.fromA.levelM, 6);
      expect(distanceM(line.b.lonLat, stake.lonLat)).toBeCloseTo(stake.fromB.levelM, 6);
      // Pythagoras on the offsets gives the first tape, and on what is left of the line the second.
      const along = stake.alongLine.levelM * (stake.backwards ? -1 : 1);
      expect(Math.hypot(along, stake.square.levelM)).toBeCloseTo(stake.fromA.levelM, 3);
      expect(Math.hypot(line.length.levelM - along, stake.square.levelM)).toBeCloseTo(stake.fromB.levelM, 3);
    }
  });

  test('on a slope have a longer tape than the plan says', () => {
    const { stakes } = planStakes(withTree([], { terrainPlane: { fallDeg: 8, towardDeg: 180 } }), 't1', wish);
    const noon = stakes.find(({ time }) => time === '13:00')!;
    // North is uphill: the tape from the stem rises by tan 8 degrees all the way.
    expect(noon.fromFoot.tapeM / noon.fromFoot.levelM).toBeCloseTo(1 / Math.cos((8 * Math.PI) / 180), 2);
  });

  test('keep to the zone’s daylight saving: the same clock time in winter and summer is another hour of the sun', () => {
    const at = (date: string) =>
      planStakes(withTree(), 't1', { ...wish, date, times: ['12:00'] }).stakes[0].utcMs;
    expect(new Date(at('2027-06-21')).toISOString()).toBe('2027-06-21T15:00:00.000Z');
    expect(new Date(at('2027-12-21')).toISOString()).toBe('2027-12-21T16:00:00.000Z');
  });
});

describe('times that are no good are said in words', () => {
  const why = (site: ReturnType<typeof withTree>, time: string, more: Partial<typeof wish> = {}) =>
    planStakes(site, 't1', { ...wish, ...more, times: ['13:00', time] }).without;

  test('the sun is not up', () =>
    expect(why(withTree(), '03:00')).toEqual([{ time: '03:00', why: 'the sun is not up' }]));

  test('the shadow is longer than is taped', () =>
    expect(why(withTree(), '20:00', { longestM: 30 })[0].why).toMatch(
      /^the shadow is \d+ m \(\d+ ft\) long, longer than is taped$/,
    ));

  test('another thing hides the tip', () => {
    // A tall barn on the way of the evening sun to the tree's tip, west of the tip.
    const barn = thing('h1', 'Polygon', [boxAround(beside(HERE, 34, 5), 2, 10)], {
      kind: 'building',
      name: 'Barn',
      heightM: 25,
    });
    const { without } = planStakes(withTree([barn]), 't1', { ...wish, times: ['13:00', '18:30'] });
    expect(without).toEqual([{ time: '18:30', why: 'the tip lies in the shadow of Barn' }]);
  });

  test('a day without any says so in one sentence', () =>
    expect(() => planStakes(withTree(), 't1', { ...wish, times: ['02:00'] })).toThrow(
      /^No tip of the shadow of Tree T1 can be staked on 2027-06-21: at 02:00 the sun is not up; expected/,
    ));

  test('a time that the clocks leave out', () =>
    expect(() => planStakes(withTree(), 't1', { ...wish, date: '2027-03-14', times: ['02:30'] })).toThrow(
      'The clocks leave out 02:30 on 2027-03-14',
    ));

  test('a day that is none', () =>
    expect(() => planStakes(withTree(), 't1', { ...wish, date: '2027-02-30' })).toThrow(
      'The date is "2027-02-30"; expected a day such as 2027-06-21.',
    ));
});

test('a belt’s stake is cast by its upper edge, at the place asked for', () => {
  const belt = thing('b1', 'LineString', [beside(HERE, -30, -20), beside(HERE, 30, -20)], {
    kind: 'belt',
    heightM: 8,
    widthM: 4,
  });
  const site = stakedSite(documentOf([belt]));
  const { stakes } = planStakes(site, 'b1', { ...wish, times: ['13:20'], alongM: 12 });
  // The sun stands in the south: the far edge is the northern one, 2 m from the middle line.
  expect(distanceM(stakes[0].castOver, beside(HERE, -18, -18))).toBeLessThan(0.05);
  expect(stakes[0].castHeightM).toBeCloseTo(8, 2);
  expect(() => planStakes(site, 'b1', { ...wish, alongM: 99 })).toThrow(
    'The place is 99 m along Belt; expected 0 to 60.0 m.',
  );
});

test('nothing to tape from is said, not guessed', () => {
  const document = documentOf([thing('t1', 'Point', HERE, POINTED)]);
  const bare = { ...document, features: document.features.filter(({ id }) => id === 't1') };
  expect(() => planStakes(stakedSite(bare), 't1', wish)).toThrow('There is nothing to tape from');
});
