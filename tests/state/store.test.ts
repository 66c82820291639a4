import { describe, expect, test } from 'vitest';
import { setProperties } from '../../src/site/actions/set-properties.ts';
import { setSite } from '../../src/site/actions/set-site.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSite } from './small-site.ts';

const rename = (name: string) => (document: ReturnType<typeof smallSite>) => setSite(document, { name });

describe('the store', () => {
  test('begins with the frame, the ground and the plan of its document', () => {
    const { frame, ground, grown } = createAppStore(smallSite()).getState();
    expect(frame.epsg).toBe(32620);
    expect(ground).not.toBeNull();
    expect(grown.things.map((thing) => thing.label)).toEqual(['walnut N1']);
  });

  test('a name that is typed leaves the ground the same, so that no map is drawn again', () => {
    const store = createAppStore(smallSite());
    const { ground } = store.getState();
    store.getState().edit('Rename the site', rename('Other name'));
    expect(store.getState().ground).toBe(ground);
    const fall = { fallDeg: 4, towardDeg: 135 };
    store.getState().edit('Lay the ground', (document) => setSite(document, { terrainPlane: fall }));
    expect(store.getState().ground).not.toBe(ground);
  });

  test('an edit is one step of undo, with its label', () => {
    const store = createAppStore(smallSite());
    store.getState().edit('Rename the site', rename('Hill'));
    expect(store.getState()).toMatchObject({ undoLabel: 'Rename the site', redoLabel: null });
    store.getState().undo();
    expect(store.getState().document.site.name).toBe('Small site');
    expect(store.getState()).toMatchObject({ undoLabel: null, redoLabel: 'Rename the site' });
    store.getState().redo();
    expect(store.getState().document.site.name).toBe('Hill');
  });

  test('a gesture of many previews is one step, and abandoned it leaves none', () => {
    const store = createAppStore(smallSite());
    for (const name of ['A', 'AB', 'ABC']) store.getState().preview(rename(name));
    expect(store.getState().document.site.name).toBe('ABC');
    store.getState().commitGesture('Rename');
    store.getState().undo();
    expect(store.getState().document.site.name).toBe('Small site');
    store.getState().preview(rename('X'));
    store.getState().abandonGesture();
    expect(store.getState().document.site.name).toBe('Small site');
  });

  test('a refused edit changes nothing and says why', () => {
    const store = createAppStore(smallSite());
    const before = store.getState().document;
    store.getState().edit('Make it negative', (site) => setProperties(site, ['tree-1'], { heightM: -3 }));
    expect(store.getState().document).toBe(before);
    expect(store.getState().message).toMatchObject({ tone: 'warning' });
    expect(store.getState().message?.text).toMatch(/heightM/);
  });

  test('the plan grows in the same step as the year changes', () => {
    const store = createAppStore(smallSite());
    const heights: number[] = [];
    store.subscribe((state) => {
      expect(state.grown.year).toBe(state.year);
      heights.push(state.grown.things[0].heightM);
    });
    store.getState().show({ year: 5 });
    store.getState().show({ year: 30 });
    expect(heights[1]).toBeGreaterThan(heights[0] + 3);
  });

  test('what is chosen is let go when it is undone away', () => {
    const store = createAppStore(smallSite());
    store.getState().edit('Delete the tree', (site) => ({
      ...site,
      features: site.features.filter((feature) => feature.id !== 'tree-1'),
    }));
    store.getState().undo();
    store.getState().select('tree-1');
    store.getState().redo();
    expect(store.getState().selection).toBeNull();
  });

  test('pointing gathers the points that were asked for, then lets the hand look again', () => {
    const store = createAppStore(smallSite());
    store.getState().takeHand({ doing: 'pointing', purpose: 'levels', pointsWanted: 2 });
    store.getState().pointGiven([1, 2]);
    expect(store.getState().hand.doing).toBe('pointing');
    store.getState().pointGiven([3, 4]);
    expect(store.getState().hand.doing).toBe('looking');
    expect(store.getState().pointed).toEqual({
      purpose: 'levels',
      points: [
        [1, 2],
        [3, 4],
      ],
      complete: true,
    });
  });
});
