import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { setSite } from '../../src/site/actions/set-site.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { memoryDeviceStore } from '../../src/state/device-store.ts';
import { keepOnDevice } from '../../src/state/keep.ts';
import { keptView } from '../../src/state/kept-view.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSite } from './small-site.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('keeping the site on the device', () => {
  test('every change is there a moment later, and reads back as the same site', async () => {
    const store = createAppStore(smallSite());
    const device = memoryDeviceStore();
    keepOnDevice(store, device, new EventTarget(), () => 1000);
    store.getState().edit('Rename', (site) => setSite(site, { name: 'Kept' }));
    await vi.advanceTimersByTimeAsync(500);
    const kept = await device.readSite();
    expect(parseSite(kept!.text, 'kept').document.site.name).toBe('Kept');
    expect(parseSite(kept!.text, 'kept').document.features).toHaveLength(3);
    expect(store.getState().savedAtMs).toBe(1000);
  });

  test('a change in the last instant is there when the page goes away', async () => {
    const store = createAppStore(smallSite());
    const device = memoryDeviceStore();
    const page = new EventTarget();
    keepOnDevice(store, device, page);
    store.getState().edit('Rename', (site) => setSite(site, { name: 'Last' }));
    page.dispatchEvent(new Event('pagehide'));
    expect((await device.readSite())!.text).toContain('"Last"');
  });

  test('says so once when the device refuses, and the site stays open', async () => {
    const store = createAppStore(smallSite());
    const device = {
      ...memoryDeviceStore(),
      writeSite: () => Promise.reject(new Error('the disk is full')),
    };
    keepOnDevice(store, device, new EventTarget());
    store.getState().edit('Rename', (site) => setSite(site, { name: 'Refused' }));
    await vi.advanceTimersByTimeAsync(500);
    expect(store.getState().message?.text).toMatch(/Save the file/);
    expect(store.getState().document.site.name).toBe('Refused');
  });

  test('choices of view are kept, and damaged ones are left out', async () => {
    const store = createAppStore(smallSite());
    const device = memoryDeviceStore();
    keepOnDevice(store, device, new EventTarget());
    store.getState().show({ year: 7, unitSystem: 'imperial' });
    await vi.advanceTimersByTimeAsync(500);
    expect(keptView(await device.readChoices())).toMatchObject({ year: 7, unitSystem: 'imperial' });
    expect(keptView({ year: 900, step: 'nowhere', period: 3, theme: 'dark' })).toEqual({
      period: 3,
      theme: 'dark',
    });
  });
});
