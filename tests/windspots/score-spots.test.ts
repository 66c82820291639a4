import { describe, expect, test } from 'vitest';
import { findablePoints } from '../../src/outside/findable-points.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { serialiseSite } from '../../src/site/serialise-site.ts';
import { keptSpots } from '../../src/windspots/kept-spots.ts';
import { planSpots } from '../../src/windspots/plan-spots.ts';
import { scoreSpots } from '../../src/windspots/score-spots.ts';
import { scoreSentences } from '../../src/windspots/score-words.ts';
import { keepMeters, writeDown } from '../../src/windspots/write-down.ts';
import { stakedSite } from '../stakes/staked-site.ts';
import { beltSite, wish } from './belt-site.ts';

const HEIGHTS = [2, 4, 7, 10, 14, 18];
const OPEN_MPS = 4;
type Site = ReturnType<typeof beltSite>;
const reading = (share: number, part: object = {}) => ({
  date: '2027-07-11',
  time: '14:30',
  openMps: OPEN_MPS,
  spotMps: share * OPEN_MPS,
  minutes: 10,
  windFromDeg: 272,
  ...part,
});

/** What is written down for one site and read in another, as the world may be. */
function readIn(mine: Site, world: Site, openFactor = 1, heights: readonly number[] = HEIGHTS): SiteDocument {
  const plan = planSpots(mine, 'b1', wish({ heights }));
  const places = plan.spots.map(({ lonLat }) => lonLat);
  const seen = planSpots(world, 'b1', wish({ heights: [], places, wind: { fromDeg: 272, speedMps: 6 } }));
  return keptSpots(writeDown(mine.document, plan), 'b1').reduce(
    (document, { id }, i) => keepMeters(document, id, reading(seen.spots[i].expected.share / openFactor)),
    writeDown(mine.document, plan),
  );
}
const scoreOf = (document: SiteDocument) =>
  scoreSpots(stakedSite(document), 'b1', 'Long belt', keptSpots(document, 'b1'));

describe('readings of two meters', () => {
  test('as promised: the miss is nothing and nothing is to be set right', () => {
    const score = scoreOf(readIn(beltSite(), beltSite()));
    expect(score.readings).toHaveLength(HEIGHTS.length);
    expect(score.readings.every(({ within }) => within === 'function')).toBe(true);
    expect(Math.abs(score.meanMissShare)).toBeLessThan(0.01);
    expect(score.fits).toEqual([]);
    expect(scoreSentences(score, 'm').join(' ')).toContain('as near as two hand meters can tell');
  });

  test('behind a lower belt: found from the miss', () => {
    const [best] = scoreOf(readIn(beltSite(), beltSite({ heightM: 6.5 }))).fits ?? [];
    expect(best.what).toBe('height');
    expect(best.factor).toBeCloseTo(0.65, 1);
  });

  test('behind a belt more open than drawn: found from the miss', () => {
    const score = scoreOf(readIn(beltSite(), beltSite({ opticalPorosityLeafOn: 0.75 })));
    const [best] = score.fits ?? [];
    expect(best.what).toBe('foliage');
    expect(0.4 ** best.factor).toBeCloseTo(0.75, 1);
    expect(scoreSentences(score, 'm').join(' ')).toMatch(
      /lets 7\d % of the daylight through instead of 40 %/,
    );
  });

  test('beside an open meter that was not in the open: found from the miss', () => {
    const [best] = scoreOf(readIn(beltSite(), beltSite(), 0.7)).fits ?? [];
    expect(best.what).toBe('open');
    expect(best.factor).toBeCloseTo(0.7, 1);
  });

  test('so few that nothing is told apart say so', () => {
    const score = scoreOf(readIn(beltSite(), beltSite({ heightM: 7 }), 1, [5]));
    expect(score.fits).toBeNull();
    expect(scoreSentences(score, 'm').join(' ')).toContain('So few readings tell nothing apart');
  });
});

describe('what was written down', () => {
  const plan = planSpots(beltSite(), 'b1', wish());
  test('waits for its readings, once, however often it is written', () => {
    const once = writeDown(beltSite().document, plan);
    expect(keptSpots(writeDown(once, plan), 'b1')).toHaveLength(4);
    const score = scoreOf(once);
    expect(score.waiting).toHaveLength(4);
    expect(scoreSentences(score, 'm')).toEqual([
      'No reading yet that can be scored.',
      '4 written down wait for a reading.',
    ]);
  });

  test('stays as it stood when the belt is changed and written down again', () => {
    const document = readIn(beltSite(), beltSite());
    const before = keptSpots(document, 'b1');
    const taller = {
      ...document,
      features: document.features.map((feature) =>
        feature.id === 'b1' ? { ...feature, properties: { ...feature.properties, heightM: 14 } } : feature,
      ),
    } as SiteDocument;
    const again = writeDown(taller, planSpots(stakedSite(taller), 'b1', wish({ heights: HEIGHTS })));
    const read = keptSpots(again, 'b1').filter((kept) => kept.reading !== null);
    expect(read).toEqual(before);
    // Scored against what stood then, explained by the site as it is now.
    expect(scoreOf(again).readings.every(({ within }) => within === 'function')).toBe(true);
  });

  test('is kept in the site file as it is, through saving and loading', () => {
    const document = readIn(beltSite(), beltSite({ heightM: 8 }));
    const again = parseSite(serialiseSite(document), 'again.site.geojson').document;
    expect(keptSpots(again, 'b1').map(({ expected, reading: each }) => [expected, each])).toEqual(
      keptSpots(document, 'b1').map(({ expected, reading: each }) => [expected, each]),
    );
    expect(again.features.find(({ properties }) => properties.kind === 'measure')?.properties).toMatchObject({
      quantity: 'wind',
      of: 'b1',
      openMps: OPEN_MPS,
      expected: { date: '2027-07-10', windFromDeg: 270, windMps: 6, readingHeightM: 1.5 },
    });
  });

  test('is no point to tape from', () => {
    const site = beltSite();
    const document = writeDown(site.document, plan);
    expect(findablePoints(document, site.frame, null).points).toHaveLength(
      findablePoints(site.document, site.frame, null).points.length,
    );
  });
});

describe('a reading is left out, and why is said, when', () => {
  const document = writeDown(beltSite().document, planSpots(beltSite(), 'b1', wish({ heights: [5] })));
  const [{ id }] = keptSpots(document, 'b1');
  const left = (part: object) => scoreOf(keepMeters(document, id, reading(0.3, part))).left[0]?.why;
  test('the wind came from elsewhere', () =>
    expect(left({ windFromDeg: 310 })).toBe('the wind came from 40° further round than was written for'));
  test('the season is another', () =>
    expect(left({ date: '2027-11-10' })).toMatch(/^it was read 123 days from/));
  test('it was too short', () => expect(left({ minutes: 1 })).toMatch(/in fewer than 5 a gust decides/));
  test('the wind was too light', () =>
    expect(left({ openMps: 1 })).toBe('the open wind was 1 m/s; below 1.5 m/s hand meters stall'));
  test('no meter can have shown it, it is refused', () =>
    expect(() => keepMeters(document, id, reading(0.3, { openMps: 0 }))).toThrow(
      'The meter in the open showed 0 m/s; expected a mean above 0.',
    ));
});
