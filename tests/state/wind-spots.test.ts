import { describe, expect, test } from 'vitest';
import { createAppStore } from '../../src/state/store.ts';
import {
  acceptPorosity,
  addSpot,
  beltFindings,
  keepWindReading,
  openWindSpots,
  windSpotsAnswer,
  windSpotsOf,
  writeSpotsDown,
} from '../../src/state/wind-spots.ts';
import { keptSpots } from '../../src/windspots/kept-spots.ts';
import { beltSite, beside, HERE } from '../windspots/belt-site.ts';

function opened() {
  const store = createAppStore(beltSite().document);
  store.getState().select('b1');
  openWindSpots(store.getState(), 'b1');
  const ask = (part: object) =>
    store.getState().show({ windSpots: { ...store.getState().windSpots!, ...part } });
  ask({ date: '2027-07-10', wind: { fromDeg: 270, speedMps: 6 }, heights: [2, 5, 9] });
  return { store, ask, answer: () => windSpotsAnswer(store.getState()) };
}

describe('wind spots on the screen', () => {
  test('open for tomorrow, square to the belt', () => {
    const { store } = opened();
    openWindSpots(store.getState(), 'b1');
    const there = (ms: number) =>
      new Intl.DateTimeFormat('en-CA', { timeZone: 'America/Halifax' }).format(ms);
    const { date, wind } = store.getState().windSpots!;
    expect(date).toBe(there(Date.now() + 86_400_000));
    expect([90, 270]).toContain(wind.fromDeg);
  });

  test('are there for the chosen belt alone, and instead of its shadow stakes', () => {
    const { store, answer } = opened();
    expect(answer()?.plan?.spots).toHaveLength(3);
    expect(store.getState().stakes).toBeNull();
    store.getState().select('f1');
    expect(answer()).toBeNull();
  });

  test('are worked out once for all who ask, and again when the site changes', () => {
    const { store, answer } = opened();
    const first = answer();
    expect(answer()).toBe(first);
    store.getState().show({ year: 7 });
    expect(answer()).toBe(first);
    writeSpotsDown(store.getState(), first!.plan!);
    expect(answer()).not.toBe(first);
  });

  test('take a place from the map, and say why there is none', () => {
    const { store, ask, answer } = opened();
    addSpot(store.getState(), beside(HERE, 35, 5));
    expect(answer()?.plan?.spots.map(({ words }) => words)).toContain('the chosen place');
    ask({ wind: { fromDeg: 0, speedMps: 6 } });
    expect(answer()).toMatchObject({
      plan: null,
      wrong: expect.stringContaining('No spot behind Long belt'),
    });
  });

  test('are written down, read, scored, set right and undone', () => {
    const { store, answer } = opened();
    writeSpotsDown(store.getState(), answer()!.plan!);
    const waiting = () => answer()!.score!.waiting;
    expect(windSpotsOf(store.getState().document, store.getState().document.features[1])).toEqual({
      of: 'b1',
      readings: 0,
      waiting: 3,
    });
    // As if the belt let half the daylight through and more.
    for (const share of [0.5, 0.42, 0.46]) {
      const [kept] = waiting();
      const reading = {
        date: '2027-07-10',
        time: null,
        openMps: 5,
        spotMps: 5 * share,
        minutes: 10,
        windFromDeg: 270,
      };
      expect(keepWindReading(store, kept, reading)).toBe(true);
    }
    expect(store.getState().message?.text).toMatch(/^Kept\. 3 readings: /);
    const { score } = answer()!;
    const { porosity } = beltFindings(score!);
    expect(porosity).toBeGreaterThan(0.5);
    acceptPorosity(store.getState(), 'b1', score!, porosity!);
    const belt = () => store.getState().document.features.find(({ id }) => id === 'b1')?.properties;
    expect(belt()).toMatchObject({ opticalPorosityLeafOn: Number(porosity!.toFixed(2)) });
    expect(answer()!.score!.fits).toEqual([]);
    store.getState().undo();
    expect(belt()).toMatchObject({ opticalPorosityLeafOn: 0.4 });
    store.getState().undo();
    expect(waiting()).toHaveLength(1);
  });

  test('lead from a reading to its belt', () => {
    const { store, answer } = opened();
    writeSpotsDown(store.getState(), answer()!.plan!);
    const { document } = store.getState();
    const reading = document.features.find(({ properties }) => properties.kind === 'measure')!;
    expect(windSpotsOf(document, reading)?.of).toBe('b1');
    expect(windSpotsOf(document, document.features[0])).toBeNull();
  });

  test('refuse a reading that no meter can have shown, and say why', () => {
    const { store, answer } = opened();
    writeSpotsDown(store.getState(), answer()!.plan!);
    const [kept] = keptSpots(store.getState().document, 'b1');
    const reading = { date: '2027-07-10', time: null, openMps: 0, spotMps: 0, minutes: 10, windFromDeg: 270 };
    expect(keepWindReading(store, kept, reading)).toBe(false);
    expect(store.getState().message).toMatchObject({
      tone: 'warning',
      text: expect.stringContaining('expected a mean above 0'),
    });
  });
});
