import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/numeric/random.ts';
import { addFeatures } from '../../src/site/actions/add-feature.ts';
import { setProperties } from '../../src/site/actions/set-properties.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { serialiseSite } from '../../src/site/serialise-site.ts';
import { planStakes } from '../../src/stakes/plan-stakes.ts';
import { placeSeen, readingToKeep, shadowReadings } from '../../src/stakes/readings.ts';
import { scoreReadings } from '../../src/stakes/score-readings.ts';
import { LONGEST_M } from '../../src/stakes/stake-plan.ts';
import { beside, documentOf, HERE, POINTED, stakedSite, thing } from './staked-site.ts';

const TIMES = ['10:00', '12:00', '14:00', '16:00'];
const wish = { date: '2027-06-21', times: TIMES, longestM: LONGEST_M, line: null };
const small = (properties: Record<string, unknown> = {}) =>
  documentOf([thing('t1', 'Point', beside(HERE, 20, 10), { ...POINTED, ...properties })]);

/** The document with what would be seen if the world were another document, taped from this one's stakes. */
function withReadings(document: SiteDocument, world: SiteDocument, clockShiftMin = 0, noiseM = 0) {
  const random = seededRandom(7);
  const mine = planStakes(stakedSite(document), 't1', wish);
  const shifted = TIMES.map((time) => {
    const minutes = Number(time.slice(0, 2)) * 60 + Number(time.slice(3)) + clockShiftMin;
    return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
  });
  const seen = planStakes(stakedSite(world), 't1', { ...wish, times: shifted });
  const drawn = mine.stakes.map((stake, i) => {
    const [lon, lat] = beside(seen.stakes[i].lonLat, noiseM * (random() - 0.5), noiseM * (random() - 0.5));
    const kept = readingToKeep(mine, stake, stake.time, { by: 'stake', beyondM: 0, rightM: 0 });
    return { ...kept, geometry: { type: 'Point' as const, coordinates: [lon, lat] as [number, number] } };
  });
  return addFeatures(document, drawn).document;
}
const scoreOf = (document: SiteDocument) =>
  scoreReadings(stakedSite(document), 't1', shadowReadings(document, 't1'));

describe('readings of where the tip was seen', () => {
  test('as computed: the miss is nothing and nothing is to be set right', () => {
    const score = scoreOf(withReadings(small(), small()));
    expect(score.readings).toHaveLength(4);
    expect(score.furthestM).toBeLessThan(0.01);
    expect(score.cause).toEqual({ what: 'nothing' });
  });

  test('of a taller tree: found from the miss, each reading with the height that fits it', () => {
    const score = scoreOf(withReadings(small(), small({ heightM: 11 })));
    expect(score.cause.what).toBe('height');
    expect(score.height?.heightM).toBeCloseTo(11, 1);
    for (const { fitsHeightM, beyondM } of score.readings) {
      expect(fitsHeightM).toBeCloseTo(11, 1);
      expect(beyondM).toBeGreaterThan(0.3);
    }
  });

  test('when the corrected height is taken the miss is gone', () => {
    const before = withReadings(small(), small({ heightM: 11 }));
    const { height } = scoreOf(before);
    const after = setProperties(before, ['t1'], {
      heightM: height?.heightM,
      measuredYear: height?.measuredYear,
    });
    expect(scoreOf(after).furthestM).toBeLessThan(0.05);
    expect(scoreOf(after).cause).toEqual({ what: 'nothing' });
  });

  test('with the unsteadiness of eye and tape still give the height within a third of a metre', () => {
    const score = scoreOf(withReadings(small(), small({ heightM: 12 }), 0, 0.4));
    expect(Math.abs((score.height?.heightM ?? 0) - 12)).toBeLessThan(0.34);
  });

  test('by a clock that was an hour off: said to be the clock, not the tree', () => {
    const { cause } = scoreOf(withReadings(small(), small(), 60));
    expect(cause.what).toBe('clock');
    expect(cause.what === 'clock' && cause.slowMinutes).toBeCloseTo(60, 0);
  });

  test('of a tree that stands elsewhere: said to be its place', () => {
    const moved = documentOf([thing('t1', 'Point', beside(HERE, 21.5, 9), POINTED)]);
    const { cause } = scoreOf(withReadings(small(), moved));
    expect(cause.what).toBe('place');
    if (cause.what === 'place') {
      expect(cause.eastM).toBeCloseTo(1.5, 1);
      expect(cause.northM).toBeCloseTo(-1, 1);
    }
  });

  test('are kept in the site file as they are, through saving and loading', () => {
    const document = withReadings(small(), small({ heightM: 11 }));
    const again = parseSite(serialiseSite(document), 'again.site.geojson').document;
    // The file writes places to a tenth of a millimetre.
    expect(scoreOf(again).meanBeyondM).toBeCloseTo(scoreOf(document).meanBeyondM, 3);
    expect(shadowReadings(again, 't1').map(({ time }) => time)).toEqual(TIMES);
    const [first] = again.features.filter(({ properties }) => properties.kind === 'measure');
    expect(first.properties).toMatchObject({
      quantity: 'shadow',
      date: '2027-06-21',
      time: '10:00',
      of: 't1',
    });
  });
});

describe('where the tip was', () => {
  const plan = planStakes(stakedSite(small()), 't1', wish);
  test('by two tapes is the stake itself when they read as planned', () => {
    for (const stake of plan.stakes) {
      const [lon, lat] = placeSeen(plan, stake, {
        by: 'tapes',
        fromAM: stake.fromA.tapeM,
        fromBM: stake.fromB.tapeM,
      });
      expect(lon).toBeCloseTo(stake.lonLat[0], 7);
      expect(lat).toBeCloseTo(stake.lonLat[1], 7);
    }
  });
  test('by tapes that do not meet is refused in a sentence', () =>
    expect(() => placeSeen(plan, plan.stakes[0], { by: 'tapes', fromAM: 1, fromBM: 1 })).toThrow(
      /^Tapes of 1 m from [A-Z] and 1 m from [A-Z] do not meet: the two are \d+\.\d\d m apart\.$/,
    ));
});
