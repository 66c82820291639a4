import { describe, expect, test } from 'vitest';
import {
  acceptHeight,
  keepReading,
  openStakes,
  stakesAnswer,
  stakesOf,
} from '../../src/state/shadow-stakes.ts';
import { createAppStore } from '../../src/state/store.ts';
import { beside, documentOf, HERE, POINTED, thing } from '../stakes/staked-site.ts';

function opened() {
  const store = createAppStore(documentOf([thing('t1', 'Point', beside(HERE, 20, 10), POINTED)]));
  store.getState().select('t1');
  openStakes(store.getState(), 't1');
  const ask = (part: object) => store.getState().show({ stakes: { ...store.getState().stakes!, ...part } });
  ask({ date: '2027-06-21', times: ['10:00', '13:00', '16:00'] });
  return { store, ask, answer: () => stakesAnswer(store.getState()) };
}

describe('shadow stakes on the screen', () => {
  test('open for tomorrow, as the calendar is at the site', () => {
    const { store } = opened();
    openStakes(store.getState(), 't1');
    const there = (ms: number) =>
      new Intl.DateTimeFormat('en-CA', { timeZone: 'America/Halifax' }).format(ms);
    expect(store.getState().stakes?.date).toBe(there(Date.now() + 86_400_000));
  });

  test('are there for the chosen thing alone', () => {
    const { store, answer } = opened();
    expect(answer()?.plan?.stakes).toHaveLength(3);
    store.getState().select('f1');
    expect(answer()).toBeNull();
  });

  test('are worked out once for all who ask, and again when the site changes', () => {
    const { store, answer } = opened();
    const first = answer();
    expect(answer()).toBe(first);
    store.getState().show({ year: 7 });
    expect(answer()).toBe(first);
    acceptHeight(store.getState(), 't1', { heightM: 12, errorM: 0.1, measuredYear: 2027 });
    expect(answer()).not.toBe(first);
  });

  test('say why there are none', () => {
    const { ask, answer } = opened();
    ask({ times: ['02:00'] });
    expect(answer()).toMatchObject({
      plan: null,
      wrong: expect.stringContaining('at 02:00 the sun is not up'),
    });
  });

  test('keep a reading in the site, say the miss, and undo it', () => {
    const { store, answer } = opened();
    const plan = answer()!.plan!;
    for (const stake of plan.stakes) {
      const beyondM = stake.furtherPerMetreM * 1.5;
      expect(keepReading(store, plan, stake, stake.time, { by: 'stake', beyondM, rightM: 0 })).toBe(true);
    }
    expect(answer()?.score?.readings).toHaveLength(3);
    expect(store.getState().message?.text).toMatch(/^Kept\. 3 readings: in the mean the tip was/);
    const { height } = answer()!.score!;
    expect(height?.heightM).toBeCloseTo(11.5, 1);

    acceptHeight(store.getState(), 't1', height!);
    const tree = () => store.getState().document.features.find(({ id }) => id === 't1')?.properties;
    expect(tree()).toMatchObject({ heightM: 11.5, measuredYear: 2027 });
    expect(answer()?.score?.cause).toEqual({ what: 'nothing' });

    store.getState().undo();
    expect(tree()).toMatchObject({ heightM: 10 });
    store.getState().undo();
    expect(answer()?.score?.readings).toHaveLength(2);
  });

  test('are reached from a reading too, on its day', () => {
    const { store, answer } = opened();
    const plan = answer()!.plan!;
    keepReading(store, plan, plan.stakes[0], '10:00', { by: 'stake', beyondM: 0, rightM: 0 });
    const { document } = store.getState();
    const reading = document.features.find(({ properties }) => properties.kind === 'measure')!;
    expect(stakesOf(document, reading)).toEqual({ of: 't1', readings: 1, day: '2027-06-21' });
    expect(stakesOf(document, document.features[0])).toBeNull();
  });

  test('refuse a reading that cannot be, and say why', () => {
    const { store, answer } = opened();
    const plan = answer()!.plan!;
    const kept = keepReading(store, plan, plan.stakes[0], '10:00', { by: 'tapes', fromAM: 1, fromBM: 1 });
    expect(kept).toBe(false);
    expect(store.getState().message).toMatchObject({
      tone: 'warning',
      text: expect.stringContaining('do not meet'),
    });
    expect(answer()?.score).toBeNull();
  });
});
