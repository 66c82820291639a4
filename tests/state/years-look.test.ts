import { describe, expect, test, vi } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import type { JobName, JobRunner } from '../../src/jobs/messages.ts';
import { createAppStore } from '../../src/state/store.ts';
import { createYearsPasses, followedField } from '../../src/state/years-look.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import type { YearsLook } from '../../src/years/years-look-types.ts';
import { smallSiteWithBelt } from './small-site.ts';

const reading = () => ({ readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS });

/** Counts the years of light that are asked for. */
function counting(): { runner: JobRunner; asked: { years: number } } {
  const inner = createLocalRunner();
  const asked = { years: 0 };
  return {
    asked,
    runner: {
      ...inner,
      threads: inner.threads,
      run: (name: JobName, request: never, options) => {
        if (name === 'light-years') asked.years += (request as { years: unknown[] }).years.length;
        return inner.run(name, request, options) as never;
      },
    } as JobRunner,
  };
}

async function look(
  passes: ReturnType<typeof createYearsPasses>,
  store: ReturnType<typeof createAppStore>,
  full: boolean,
): Promise<YearsLook[]> {
  const state = store.getState();
  const field = followedField(state.document)!;
  const found: YearsLook[] = [];
  for (const pass of passes(state, state.ground!, field, full))
    found.push(await pass(new AbortController().signal, () => {}));
  return found;
}

describe('the years in one look', () => {
  test('coarse first, then every fifth year cell by cell, all of them, and the band about them', async () => {
    const store = createAppStore(smallSiteWithBelt());
    const { runner } = counting();
    const [coarse, fifth, all, band] = await look(createYearsPasses(runner, reading), store, true);
    expect(coarse.maps.size).toBe(0);
    expect(coarse.years.length).toBe(13);
    expect([...fifth.maps.keys()]).toEqual([0, 5, 10, 15, 20, 25, 30, 35, 40]);
    expect(all.years.length).toBe(41);
    expect(all.grid).toMatchObject({ columns: 40, rows: 30, cellM: 1 });
    expect(all.figures[40].canopyShare).toBeGreaterThan(all.figures[0].canopyShare);
    expect(all.figures[40].meanLightShare).toBeLessThan(all.figures[0].meanLightShare);
    // The belt stands: the field is as sheltered in the first year as the walnut leaves it later.
    expect(all.figures[0].shelteredShare).toBeGreaterThan(0.2);
    const { slow, fast, years } = band.band!;
    years.forEach((year, k) => {
      const usual = band.figures[year].canopyShare;
      expect(slow[k].canopyShare).toBeLessThanOrEqual(usual + 1e-9);
      expect(fast[k].canopyShare).toBeGreaterThanOrEqual(usual - 1e-9);
    });
    // A walnut bears; its first year with slow growth is not before that with fast growth.
    expect(band.crops).toMatchObject({ trees: 1 });
    const [walnut] = band.crops!.species;
    expect(walnut.firstYear.fast!).toBeLessThanOrEqual(walnut.firstYear.usual!);
    expect(walnut.firstYear.usual!).toBeLessThanOrEqual(walnut.firstYear.slow ?? 99);
    expect(band.crops!.bearing.usual[walnut.firstYear.usual!]).toBe(1);
    expect(band.crops!.bearing.usual[walnut.firstYear.usual! - 1]).toBe(0);
  }, 120_000);

  test('only what a change changes is worked out again', async () => {
    const store = createAppStore(smallSiteWithBelt());
    const { runner, asked } = counting();
    const passes = createYearsPasses(runner, reading);
    await look(passes, store, true);
    asked.years = 0;
    const again = await look(passes, store, true);
    expect(asked.years).toBe(0);
    // The walnut is felled in the 30th winter: the years before it stay as they were.
    store.getState().edit('Fell it', (document) => ({
      ...document,
      features: document.features.map((feature) =>
        feature.properties.kind === 'tree'
          ? { ...feature, properties: { ...feature.properties, removedYear: document.site.baseYear + 30 } }
          : feature,
      ) as typeof document.features,
    }));
    const after = await look(passes, store, true);
    expect(after[2].maps.get(12)).toBe(again[2].maps.get(12));
    expect(after[2].maps.get(35)).not.toBe(again[2].maps.get(35));
    // On fine cells 30 to 40; on coarse ones 30, 35 and 40 at each pace.
    expect(asked.years).toBe(11 + 3 * 3);
  }, 120_000);

  test('a stop ends it', async () => {
    const store = createAppStore(smallSiteWithBelt());
    const state = store.getState();
    const stop = new AbortController();
    const [pass] = createYearsPasses(createLocalRunner(), reading)(
      state,
      state.ground!,
      followedField(state.document)!,
      true,
    );
    const running = pass(stop.signal, () => stop.abort());
    await expect(running).rejects.toThrow();
    vi.useRealTimers();
  }, 60_000);
});
