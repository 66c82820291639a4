import type { StoreApi } from 'zustand/vanilla';
import { createRemoteRunner } from '../jobs/remote-runner.ts';
import { parseSite } from '../site/parse-site.ts';
import { keepBeltsAnswered } from './belt-answers.ts';
import { keepColdAir } from './cold-air-found.ts';
import { keepComputing } from './compute.ts';
import { type DeviceStore, memoryDeviceStore, openDeviceStore } from './device-store.ts';
import { downloadText } from './download.ts';
import { readEarlier } from './earlier-sites.ts';
import { keepEdgeProfile } from './edge-beside.ts';
import { keepFieldsCompared } from './fields-compared.ts';
import { horizonPasses, keepHorizon } from './horizon-from-here.ts';
import { keepOnDevice } from './keep.ts';
import { keepChecking } from './keep-checking.ts';
import { keepWindSpots } from './keep-wind-spots.ts';
import { keptView } from './kept-view.ts';
import { keepLayoutPair } from './layout-pair.ts';
import { keepReferencesLoaded } from './load-references.ts';
import type { App } from './model.ts';
import { keepPlaying } from './play-years.ts';
import { createProposing } from './proposed-belts.ts';
import { keepFilesIn } from './site-files.ts';
import { keepGrowthStepped } from './step-growth.ts';
import { keepWindFromHere, windPasses } from './wind-from-here.ts';
import { createCutting } from './winter-cuts.ts';
import { workersWork } from './work.ts';

/**
 * Connects the store to the device and the workers, and brings back what was open: the kept site, otherwise the demo.
 * Call once, in the browser.
 */
export async function startApp(store: StoreApi<App>): Promise<void> {
  // On a phone the map comes first; the panel is one touch away.
  store.setState({ panelOpen: !window.matchMedia('(max-width: 640px)').matches });
  const device = 'indexedDB' in globalThis ? openDeviceStore() : memoryDeviceStore();
  keepFilesIn(device);
  await bringBack(store, device);
  const runner = createRemoteRunner();
  keepOnDevice(store, device, window);
  keepReferencesLoaded(store, runner);
  keepChecking(store);
  keepPlaying(store);
  const growing = keepGrowthStepped(store, runner);
  const computing = keepComputing(store, workersWork(store, runner));
  const opened = [
    keepHorizon(store, (state, ground, at) => horizonPasses(state, ground, at, runner)),
    keepWindFromHere(store, (state, ground, at) => windPasses(state, ground, at, runner)),
    ...keepWindSpots(store, runner),
    keepLayoutPair(store, runner),
    keepFieldsCompared(store, runner),
    keepEdgeProfile(store, runner),
    keepColdAir(store, runner),
  ];
  const belts = keepBeltsAnswered(store, runner);
  const proposing = createProposing(store, runner);
  const cutting = createCutting(store, runner);
  store.setState({
    proposeBelts: proposing.propose,
    proposeCuts: cutting.look,
    cancelComputation: () => {
      growing.cancel();
      computing.cancel();
      belts.cancel();
      for (const kept of opened) kept.cancel();
      proposing.cancel();
      cutting.cancel();
    },
    computeAgain: () => {
      for (const kept of [growing, computing, belts, ...opened]) kept.again();
    },
  });
}

async function bringBack(store: StoreApi<App>, device: DeviceStore): Promise<void> {
  const choices = await device.readChoices().catch(() => ({}));
  const kept = await device.readSite().catch(() => null);
  const earlierSites = readEarlier(await device.readEarlier().catch(() => []));
  store.setState({ earlierSites });
  if (kept === null) {
    store.setState(keptView(choices, ['unitSystem', 'theme']));
    return store.getState().openDemo('sorrel-bank');
  }
  try {
    store.getState().openDocument(parseSite(kept.text, 'The kept site').document, {
      ...keptView(choices),
      savedAtMs: kept.savedAtMs,
    });
  } catch (reason) {
    // The next change will take its place on the device: hand it over first.
    downloadText('kept-site.site.geojson', kept.text, 'application/geo+json');
    await store.getState().openDemo('sorrel-bank');
    store.getState().say({
      tone: 'warning',
      text: `The site kept on this device could not be read (${(reason as Error).message}). It is among your downloads as kept-site.site.geojson; the demo is open instead.`,
    });
  }
}
