import { describe, expect, test, vi } from 'vitest';
import { setSite } from '../../src/site/actions/set-site.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { newSite } from '../../src/site/new-site.ts';
import { memoryDeviceStore } from '../../src/state/device-store.ts';
import { type EarlierSite, readEarlier } from '../../src/state/earlier-sites.ts';
import { keepOnDevice } from '../../src/state/keep.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSite } from './small-site.ts';

const named = (name: string): SiteDocument => setSite(smallSite(), { name });
const names = (sites: readonly EarlierSite[]) => sites.map(({ document }) => document.site.name);

describe('opening another site', () => {
  test('keeps the one that was open, with its edits, and brings it back', () => {
    const store = createAppStore(named('First'));
    const app = store.getState();
    app.edit('Rename', (site) => setSite(site, { name: 'First, edited' }));
    app.openDocument(named('Second'));
    expect(names(store.getState().earlierSites)).toEqual(['First, edited']);
    app.openDocument(store.getState().earlierSites[0].document);
    expect(store.getState().document.site.name).toBe('First, edited');
    expect(names(store.getState().earlierSites)).toEqual(['Second']);
  });

  test('holds a site once however often it is looked at, the latest first, five at most', () => {
    const store = createAppStore(named('A'));
    const { openDocument } = store.getState();
    for (const name of ['B', 'A', 'B', 'A']) openDocument(named(name));
    expect(names(store.getState().earlierSites)).toEqual(['B']);
    for (const name of ['C', 'D', 'E', 'F', 'G']) openDocument(named(name));
    expect(names(store.getState().earlierSites)).toEqual(['F', 'E', 'D', 'C', 'A']);
  });

  test('does not fill the list with sites on which nothing is drawn', () => {
    const store = createAppStore(newSite([10, 50], 'Empty', 2026));
    store.getState().openDocument(named('Drawn'));
    expect(store.getState().earlierSites).toEqual([]);
  });

  test('is kept on the device before the new one takes its place', async () => {
    vi.useFakeTimers();
    const store = createAppStore(named('Mine'));
    const device = memoryDeviceStore();
    const order: string[] = [];
    keepOnDevice(
      store,
      {
        ...device,
        writeEarlier: async (texts) => {
          order.push('earlier');
          await device.writeEarlier(texts);
        },
        writeSite: async (text, savedAtMs) => {
          order.push('open');
          await device.writeSite(text, savedAtMs);
        },
      },
      new EventTarget(),
    );
    store.getState().openDocument(named('Other'));
    await vi.advanceTimersByTimeAsync(500);
    vi.useRealTimers();
    expect(order).toEqual(['earlier', 'open']);
    expect(names(readEarlier(await device.readEarlier()))).toEqual(['Mine']);
  });

  test('leaves out what can no longer be read', () => {
    expect(readEarlier(['{"type":"Feature'])).toEqual([]);
  });
});
