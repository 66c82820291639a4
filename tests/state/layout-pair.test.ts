import { describe, expect, test } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { answerOf } from '../../src/layouts/layout-words.ts';
import { addLayout } from '../../src/site/actions/add-layout.ts';
import { copyLayout } from '../../src/site/actions/copy-layout.ts';
import { deleteLayout } from '../../src/site/actions/delete-layout.ts';
import { renameLayout } from '../../src/site/actions/rename-layout.ts';
import { setProperties } from '../../src/site/actions/set-properties.ts';
import { startLayouts } from '../../src/site/actions/start-layouts.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { changeInShownOnly, commonWords } from '../../src/state/common-thing.ts';
import { keepLayoutPair } from '../../src/state/layout-pair.ts';
import { pairComparison, pairField, pairOf, pairPlans, pairRaster } from '../../src/state/pair-shown.ts';
import { createAppStore } from '../../src/state/store.ts';
import { pairOfLayouts } from '../layouts/pair-of-layouts.ts';
import { smallSite, smallSiteWithBelt } from './small-site.ts';

const pairSite = () => parseSite(JSON.stringify(pairOfLayouts()), 'pair').document;

describe('layouts in the store', () => {
  test('are started, copied, named and deleted, each a step that can be undone, and the one shown is followed', () => {
    const store = createAppStore(smallSite());
    const { edit, undo, redo, show } = store.getState();
    const before = store.getState().document;
    edit('Start two layouts', (site) => startLayouts(site, 'A', 'B'));
    show({ layout: 'B' });
    edit('Rename layout B', (site) => renameLayout(site, 'B', 'Orchard'));
    expect(store.getState().layout).toBe('Orchard');
    undo();
    expect(store.getState().layout).toBe('B');
    redo();
    edit('Copy layout Orchard', (site) => copyLayout(site, 'Orchard', 'C'));
    show({ layout: 'C' });
    edit('Delete layout C', (site) => deleteLayout(site, 'C'));
    expect(store.getState().layout).toBeNull();
    for (let step = 0; step < 4; step++) undo();
    expect(store.getState().document).toBe(before);
    expect(store.getState().undoLabel).toBeNull();
  });

  test('a site is not opened with a layout that it does not have', () => {
    const store = createAppStore(smallSite());
    store.getState().openDocument(smallSite(), { layout: 'Nobody' });
    expect(store.getState().layout).toBeNull();
    store.getState().openDocument(pairSite(), { layout: 'At once' });
    expect(store.getState().layout).toBe('At once');
  });

  test('what is common is said to be so before it is changed, and can be parted', () => {
    const store = createAppStore(smallSiteWithBelt());
    const { edit, show, select } = store.getState();
    edit('Start two layouts', (site) => startLayouts(site, 'A', 'B'));
    const belt = store.getState().document.features.find(({ properties }) => properties.kind === 'belt')!;
    select(belt.id);
    expect(commonWords(store.getState())).toBeNull();
    show({ layout: 'A' });
    expect(commonWords(store.getState())).toMatch(
      /is common to all 2 layouts: what you change here changes in all\.$/,
    );
    changeInShownOnly(store.getState());
    expect(commonWords(store.getState())).toBeNull();
    expect(store.getState().undoLabel).toBe('Change it in A only');
    const owners = store
      .getState()
      .document.features.filter(({ properties }) => properties.kind === 'belt')
      .map(({ id, properties }) => [id === belt.id, properties.layout]);
    expect(owners).toEqual([
      [true, 'A'],
      [false, 'B'],
    ]);
  });
});

describe('two layouts beside each other', () => {
  test('are the first two, or those chosen, or one beside what is common', () => {
    const store = createAppStore(smallSite());
    expect(pairOf(store.getState())).toBeNull();
    store.getState().edit('Start', (site) => addLayout(site, 'A'));
    expect(pairOf(store.getState())).toEqual(['A', null]);
    expect(pairOf(store.getState())).toBe(pairOf(store.getState()));
    store.getState().edit('Start', (site) => addLayout(site, 'B'));
    store.getState().show({ comparing: { ...store.getState().comparing, layouts: ['B', 'A'] } });
    store.getState().edit('Rename', (site) => renameLayout(site, 'A', 'Z'));
    expect(pairOf(store.getState())).toEqual(['B', 'Z']);
    store.getState().edit('Delete', (site) => deleteLayout(site, 'Z'));
    expect(pairOf(store.getState())).toEqual(['B', null]);
  });

  test('are worked out while they are looked at: maps, figures and years of each', async () => {
    const store = createAppStore(pairSite());
    const runner = createLocalRunner();
    const kept = keepLayoutPair(store, runner);
    expect(store.getState().layoutPair.status).toBe('idle');
    store.getState().show({ dialog: 'two-layouts', year: 12 });
    await settled();
    const first = pairComparison(store.getState())!;
    expect(first.sides.map(({ layout }) => layout)).toEqual(['Belts first', 'At once']);
    expect(answerOf(first).figure).toBe('4 to 5 years sooner');
    expect(pairField(store.getState())?.properties.name).toBe('Pair Close');
    expect(pairRaster(store.getState(), 0)?.bands.quantity).toBe(
      pairRaster(store.getState(), 1)?.bands.quantity,
    );
    expect(pairPlans(store.getState())?.map(({ things }) => things.length)).toEqual([3, 3]);

    // Another year asks for its maps and figures alone; the years of both are known.
    store.getState().show({ year: 3 });
    await settled();
    const second = pairComparison(store.getState())!;
    expect(second.year).toBe(3);
    expect(second.sides.map(({ years }) => years)).toEqual(first.sides.map(({ years }) => years));
    expect(second.sides[0].figures).not.toEqual(first.sides[0].figures);
    expect(pairPlans(store.getState())?.map(({ things }) => things.length)).toEqual([1, 3]);

    store
      .getState()
      .edit('Plant at once', (site) => setProperties(site, ['t1', 't2'], { plantedYear: 2027 }));
    await settled();
    expect(answerOf(pairComparison(store.getState())!).figure).toBe('Nothing differs');
    kept.dispose();

    async function settled(): Promise<void> {
      await expect
        .poll(() => [store.getState().layoutPair.status, store.getState().layoutPair.stale], {
          timeout: 20_000,
        })
        .toEqual(['ready', false]);
    }
  }, 60_000);
});
