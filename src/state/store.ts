import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { siteCentre, siteFrame } from '../scene/site-ground.ts';
import type { SiteDocument } from '../site/document.ts';
import { newSite } from '../site/new-site.ts';
import { FIRST_CUTTING } from './cutting.ts';
import { derived } from './derived.ts';
import { documentActions } from './document-slice.ts';
import { fileActions } from './files-slice.ts';
import { FIRST_HAND, handActions } from './hand-slice.ts';
import { idleComputation } from './lane.ts';
import type { App, AppState } from './model.ts';
import { FIRST_PROPOSING } from './proposing.ts';
import { FIRST_VIEW, viewActions } from './view-slice.ts';

/** What stands on the screen before the kept site or the demo is there. */
const FIRST_PLACE = [-64.5, 45.1] as const;

/** A store of its own: the app has one, tests make as many as they need. No worker and no storage until they are connected. */
export function createAppStore(
  document: SiteDocument = newSite(FIRST_PLACE, 'New site', 2026),
): StoreApi<App> {
  return createStore<App>()((rawSet, get, api) => {
    // Whatever changes, what follows from it changes in the same step: nobody sees a plan of another year.
    const set: typeof api.setState = (partial) =>
      rawSet((before) => {
        const part = typeof partial === 'function' ? partial(before) : partial;
        return { ...part, ...derived({ ...before, ...part } as App, before) };
      });
    api.setState = set;
    const state: AppState = {
      document,
      undoLabel: null,
      redoLabel: null,
      savedAtMs: null,
      earlierSites: [],
      missingFiles: [],
      filesKept: 0,
      opening: 0,
      frame: siteFrame(document),
      centre: siteCentre(document),
      ground: null,
      groundDescription: '',
      grown: { year: FIRST_VIEW.year, things: [] },
      terrain: null,
      surface: null,
      weather: null,
      stepped: idleComputation(),
      windClimate: null,
      assumed: [],
      problems: [],
      ...FIRST_VIEW,
      ...FIRST_HAND,
      light: idleComputation(),
      shelter: idleComputation(),
      outlook: idleComputation(),
      costs: idleComputation(),
      yearsLook: idleComputation(),
      lightEnds: idleComputation(),
      shelterEnds: idleComputation(),
      sunTimes: idleComputation(),
      sunTimeEnds: idleComputation(),
      horizon: idleComputation(),
      proposing: FIRST_PROPOSING,
      proposals: idleComputation(),
      cutting: FIRST_CUTTING,
      winterCuts: idleComputation(),
      windHere: idleComputation(),
      spotPlan: idleComputation(),
      spotScore: idleComputation(),
      beltSun: idleComputation(),
      beltYears: idleComputation(),
      bridges: idleComputation(),
      insurance: idleComputation(),
      edgeProfile: idleComputation(),
      coldAir: idleComputation(),
      fieldsCompared: idleComputation(),
      layoutPair: idleComputation(),
    };
    // Derived once from nothing, so that the first document is grown and laid out like any other.
    const nothing = { ...state, document: null as unknown as SiteDocument };
    return {
      ...state,
      ...derived(state, nothing),
      ...documentActions(document, set, get),
      ...viewActions(set),
      ...handActions(set, get),
      ...fileActions(set, get),
      proposeBelts: () => {},
      proposeCuts: () => {},
      cancelComputation: () => {},
      computeAgain: () => {},
    };
  });
}

/** The app's one store. */
export const appStore = createAppStore();

/** Reads the app's state in a component; it renders again when what it selected changes. */
export const useApp = <Part>(selector: (app: App) => Part): Part => useStore(appStore, selector);
