/**
 * Light that follows a hand. The workers keep the field of the last map that was computed to the end; while a tree, a
 * corner or a height changes they lay only what changed over the rest, along fewer rays, and the map shows that until
 * the hand rests and the exact answer is there. The latest place wins: while one is worked out, those between are
 * passed over.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { JobRunner } from '../jobs/messages.ts';
import {
  changeLight,
  holdInLight,
  type KeptLight,
  keepLight,
  MOST_KEPT_CELLS,
  runLight,
} from '../jobs/run-light.ts';
import type { LightRequest, LightResult } from '../light/light-types.ts';
import { cellCount, type Grid } from '../numeric/grid.ts';
import { sameContent } from '../numeric/same-content.ts';
import { lightScene } from '../scene/build-scene.ts';
import type { SceneThing } from '../scene/options.ts';
import { siteGrid } from '../scene/site-grid.ts';
import { type Key, lightKeyBesideFeatures, sameKey } from './answer-keys.ts';
import { passCellsM } from './cell-size.ts';
import type { Pass } from './lane.ts';
import { lightField } from './light-field.ts';
import type { App, AppState } from './model.ts';
import { READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';

export interface LiveLight {
  /** Coarse first, then the chosen cell; or at once, where the field that is kept can be changed to the state's. */
  passes(state: AppState): readonly Pass<LightResult>[];
  /** Whether the kept field is of the state's setting; it then follows its features, and `show` is given what is found. */
  follow(state: AppState, show: (result: LightResult) => void): boolean;
}

interface Followed {
  readonly kept: KeptLight;
  readonly key: Key;
  readonly cellM: number;
  readonly request: LightRequest;
  readonly things: readonly SceneThing[];
}

export function createLiveLight(
  store: StoreApi<App>,
  runner: JobRunner,
  groundOf: (state: AppState) => Grid,
): LiveLight {
  let followed: Followed | null = null;
  /** Features that the kept field shows or has been asked for. */
  let features: AppState['document']['features'] | null = null;
  let wanted: { state: AppState; show: (result: LightResult) => void } | null = null;
  let following = false;

  const built = (state: AppState, cellM: number) => {
    const { scene, things, assumed } = lightScene(state.document, sceneOptions(state, groundOf(state)));
    const grid = siteGrid(state.document, state.frame, {
      cellM,
      layout: state.layout,
      field: lightField(state),
    });
    const request: LightRequest = { scene, grid, readingHeightM: READING_HEIGHT_M[state.layer] };
    return { request, things, assumed };
  };

  const isKept = (state: AppState): boolean =>
    followed !== null && sameKey(followed.key, lightKeyBesideFeatures(state));

  /** The light of other features in the kept field; null where it cannot follow, and is then kept no longer. */
  async function change(state: AppState, live: boolean): Promise<LightResult | null> {
    if (!followed) return null;
    const { kept, cellM, request } = followed;
    const next = built(state, cellM);
    const { crowns, prisms } = next.request.scene;
    const same = { ...next.request, scene: { ...next.request.scene, crowns: null, prisms: null } };
    const before = { ...request, scene: { ...request.scene, crowns: null, prisms: null } };
    let result: LightResult | null = null;
    // Not to be broken off: a field that is half changed is lost, and a change is short.
    if (sameContent(same, before)) result = await changeLight(runner, kept, { crowns, prisms, live });
    if (followed?.kept !== kept) return null;
    followed = result ? { ...followed, request: next.request, things: next.things } : null;
    if (result && !live) store.setState({ assumed: next.assumed });
    return result;
  }

  async function followOn(): Promise<void> {
    following = true;
    try {
      while (wanted) {
        const { state, show } = wanted;
        wanted = null;
        const result = await change(state, true);
        if (!result) break;
        show(result);
      }
    } catch {
      // The lane's own pass will meet the same trouble and say so.
      followed = null;
    } finally {
      wanted = null;
      following = false;
    }
  }

  async function compute(
    state: AppState,
    cellM: number,
    last: boolean,
    options: Parameters<typeof runLight>[2],
  ) {
    const { request, things, assumed } = built(state, cellM);
    store.setState({ assumed });
    if (!last || cellCount(request.grid) > MOST_KEPT_CELLS) return runLight(runner, request, options);
    followed = null;
    const { kept, result } = await keepLight(runner, request, options);
    followed = { kept, key: lightKeyBesideFeatures(state), cellM, request, things };
    features = state.document.features;
    hold(store.getState());
    return result;
  }

  /** The thing that is chosen is the one that will be dragged. */
  function hold({ selection }: AppState): void {
    if (selection === null || !followed) return;
    const thing = followed.things.findIndex(({ id }) => id === selection);
    // Whether it was of use shows in the next change.
    if (thing >= 0) holdInLight(runner, followed.kept, thing).catch(() => {});
  }
  store.subscribe((state, before) => {
    if (state.selection !== before.selection) hold(state);
  });

  return {
    passes(state) {
      const box = siteGrid(state.document, state.frame, {
        cellM: 5,
        layout: state.layout,
        field: lightField(state),
      });
      const cellsM = passCellsM(box, state.cellWantedM);
      const finestM = cellsM[cellsM.length - 1];
      if (isKept(state))
        return [
          async (signal, onProgress) =>
            (await change(state, false)) ?? compute(state, finestM, true, { signal, onProgress }),
        ];
      return cellsM.map(
        (cellM, index) => (signal, onProgress) =>
          compute(state, cellM, index === cellsM.length - 1, { signal, onProgress }),
      );
    },
    follow(state, show) {
      if (!isKept(state)) return false;
      if (state.document.features !== features) {
        features = state.document.features;
        wanted = { state, show };
        if (!following) void followOn();
      }
      return true;
    },
  };
}
