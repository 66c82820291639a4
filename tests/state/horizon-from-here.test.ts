import { expect, test, vi } from 'vitest';
import { type LonLat, toLonLat } from '../../src/geo/frame.ts';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { horizonPasses, keepHorizon } from '../../src/state/horizon-from-here.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSite } from './small-site.ts';

/** An app whose horizon is worked out in this thread, and how often it was asked for. */
function begin() {
  const store = createAppStore(smallSite());
  const runner = createLocalRunner();
  const asked: { month: number; year: number }[] = [];
  keepHorizon(store, (state, ground, at) =>
    horizonPasses(state, ground, at, {
      ...runner,
      run: (job, request, options) => {
        asked.push({ month: (request as { month: number }).month, year: state.year });
        return runner.run(job, request, options);
      },
    }),
  );
  const place = (x: number, y: number): LonLat => toLonLat(store.getState().frame, [x, y]);
  const ready = () =>
    vi.waitFor(() => expect(store.getState().horizon.status).toBe('ready'), { timeout: 20_000 });
  return { store, asked, place, ready };
}

test('the horizon is worked out while its dialog is open, for the spot, the year, the month and the height', async () => {
  const { store, asked, place, ready } = begin();
  store.getState().show({ horizonAt: place(12, 15) });
  expect(store.getState().horizon.status).toBe('idle');
  store.getState().show({ dialog: 'horizon' });
  await ready();
  const found = store.getState().horizon.result!;
  expect(found.at).toBe(store.getState().horizonAt);
  expect(found.year).toBe(20);
  expect(found.view.readingHeightM).toBe(0.1);
  // The middle of the growing season, as no month is chosen.
  expect(found.view.month).toBe(6);
  expect(found.things.map(({ label }) => label)).toContain('walnut N1');
  const { open, got, toLand, shared, toThings } = found.hours.season;
  expect(got + toLand + shared + toThings.reduce((sum, hours) => sum + hours, 0)).toBeCloseTo(open, 0);
  expect(open - got).toBeGreaterThan(50);

  // Another span of the same table asks for nothing new; a month does.
  store.getState().show({ period: 'year' });
  expect(store.getState().horizon.status).toBe('ready');
  store.getState().show({ period: 0 });
  await ready();
  expect(asked.map(({ month }) => month)).toEqual([6, 0]);

  store.getState().show({ dialog: null });
  store.getState().show({ year: 5 });
  expect(store.getState().horizon).toMatchObject({ status: 'ready', stale: true });
  expect(asked).toHaveLength(2);
});

test('a spot off the known ground is refused in a sentence, and the next spot is worked out', async () => {
  const { store, place, ready } = begin();
  store.getState().show({ dialog: 'horizon', horizonAt: place(90_000, 0) });
  await vi.waitFor(() => expect(store.getState().horizon.status).toBe('failed'), { timeout: 20_000 });
  expect(store.getState().horizon.message).toContain('not known at this spot');
  store.getState().show({ horizonAt: place(5, 5) });
  await ready();
  expect(store.getState().horizon.result!.at).toBe(store.getState().horizonAt);
});
