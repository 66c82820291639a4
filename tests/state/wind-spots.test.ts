import { describe, expect, test, vi } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import type { JobName, JobRunner } from '../../src/jobs/messages.ts';
import { keepWindSpots } from '../../src/state/keep-wind-spots.ts';
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

/** Runs here, and remembers what was asked. */
function countingRunner() {
  const asked: JobName[] = [];
  const local = createLocalRunner();
  const runner: JobRunner = {
    ...local,
    run: (name, request, options) => {
      asked.push(name);
      return local.run(name, request, options);
    },
  };
  return { runner, asked };
}

function opened() {
  const store = createAppStore(beltSite().document);
  const { runner, asked } = countingRunner();
  keepWindSpots(store, runner);
  store.getState().select('b1');
  openWindSpots(store.getState(), 'b1');
  const ask = (part: object) =>
    store.getState().show({ windSpots: { ...store.getState().windSpots!, ...part } });
  ask({ date: '2027-07-10', wind: { fromDeg: 270, speedMps: 6 }, heights: [2, 5, 9] });
  const answer = () => windSpotsAnswer(store.getState());
  /** The answer when the workers are done. */
  const settled = () =>
    vi.waitFor(
      () => {
        const { spotPlan, spotScore } = store.getState();
        for (const { status } of [spotPlan, spotScore]) expect(status).not.toBe('computing');
        return answer()!;
      },
      { timeout: 20_000 },
    );
  return { store, asked, ask, answer, settled };
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

  test('are there for the chosen belt alone, and instead of its shadow stakes', async () => {
    const { store, answer, settled } = opened();
    expect((await settled()).plan?.spots).toHaveLength(3);
    expect(store.getState().stakes).toBeNull();
    store.getState().select('f1');
    expect(answer()).toBeNull();
  });

  test('are worked out once for all who ask; the last plan stays, and says so, until the next is there', async () => {
    const { store, asked, ask, answer, settled } = opened();
    expect(answer()).toMatchObject({ plan: null, stale: false, wrong: null });
    const first = await settled();
    expect(asked).toEqual(['plan-spots']);
    expect(answer()).toBe(first);
    store.getState().show({ year: 7 });
    expect(answer()).toBe(first);
    ask({ heights: [3] });
    ask({ heights: [4] });
    expect(answer()).toMatchObject({ plan: first.plan, stale: true, wrong: null });
    const next = await settled();
    expect(next.stale).toBe(false);
    expect(next.plan?.spots.map(({ words }) => words)).toEqual(['4 heights behind']);
    expect(asked).toEqual(['plan-spots', 'plan-spots']);
  });

  test('writing them down changes no plan', async () => {
    const { store, asked, answer, settled } = opened();
    const { plan } = await settled();
    writeSpotsDown(store.getState(), plan!);
    expect(answer()).toMatchObject({ plan, stale: false });
    expect(answer()!.score!.waiting).toHaveLength(3);
    await settled();
    expect(asked).toEqual(['plan-spots']);
  });

  test('never show the plan of another belt', async () => {
    const { store, answer, settled } = opened();
    await settled();
    store.getState().edit('Another belt', (document) => ({
      ...document,
      features: document.features.map((each) => (each.id === 'b1' ? { ...each, id: 'b2' } : each)),
    }));
    store.getState().select('b2');
    openWindSpots(store.getState(), 'b2');
    expect(answer()).toMatchObject({ plan: null, wrong: null });
    expect((await settled()).plan?.belt.id).toBe('b2');
  });

  test('take a place from the map, and say why there is none', async () => {
    const { store, ask, settled } = opened();
    addSpot(store.getState(), beside(HERE, 35, 5));
    expect((await settled()).plan?.spots.map(({ words }) => words)).toContain('the chosen place');
    ask({ wind: { fromDeg: 0, speedMps: 6 } });
    expect(await settled()).toMatchObject({
      plan: null,
      wrong: expect.stringContaining('No spot behind Long belt'),
    });
  });

  test('are written down, read, scored, set right and undone', async () => {
    const { store, answer, settled } = opened();
    writeSpotsDown(store.getState(), (await settled()).plan!);
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
    // The misses are there at once; what would explain them is the engine's.
    expect(answer()!.score).toMatchObject({ readings: { length: 3 } });
    expect(answer()!.unexplained).toContain('is being worked out');
    expect(beltFindings(answer()!.score!)).toEqual({});
    const { score, unexplained } = await settled();
    expect(unexplained).toBeNull();
    const { porosity } = beltFindings(score!);
    expect(porosity).toBeGreaterThan(0.5);
    acceptPorosity(store.getState(), 'b1', score!, porosity!);
    const belt = () => store.getState().document.features.find(({ id }) => id === 'b1')?.properties;
    expect(belt()).toMatchObject({ opticalPorosityLeafOn: Number(porosity!.toFixed(2)) });
    expect((await settled()).score!.fits).toEqual([]);
    store.getState().undo();
    expect(belt()).toMatchObject({ opticalPorosityLeafOn: 0.4 });
    store.getState().undo();
    expect(waiting()).toHaveLength(1);
  });

  test('lead from a reading to its belt', async () => {
    const { store, settled } = opened();
    writeSpotsDown(store.getState(), (await settled()).plan!);
    const { document } = store.getState();
    const reading = document.features.find(({ properties }) => properties.kind === 'measure')!;
    expect(windSpotsOf(document, reading)?.of).toBe('b1');
    expect(windSpotsOf(document, document.features[0])).toBeNull();
  });

  test('refuse a reading that no meter can have shown, and say why', async () => {
    const { store, settled } = opened();
    writeSpotsDown(store.getState(), (await settled()).plan!);
    const [kept] = keptSpots(store.getState().document, 'b1');
    const reading = { date: '2027-07-10', time: null, openMps: 0, spotMps: 0, minutes: 10, windFromDeg: 270 };
    expect(keepWindReading(store, kept, reading)).toBe(false);
    expect(store.getState().message).toMatchObject({
      tone: 'warning',
      text: expect.stringContaining('expected a mean above 0'),
    });
  });
});
