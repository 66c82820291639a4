import type { StoreApi } from 'zustand/vanilla';
import type { CutWay, ProposedCut, WinterCuts } from '../cuts/cut-result.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { runWinterCuts } from '../jobs/run-winter-cuts.ts';
import { sameContent } from '../numeric/same-content.ts';
import { addCare } from '../site/actions/add-care.ts';
import { takenField } from '../site/chosen-features.ts';
import type { CareRecord } from '../site/records/care.ts';
import { type Cutting, NO_CUT_SAID } from './cutting.ts';
import { laneOf, lookAtChanges } from './keep-answers.ts';
import type { App, AppState } from './model.ts';
import { MOST_CELLS, patchesOf } from './patch-outlook.ts';
import { WIND_READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import { GALE_MPS } from './work.ts';

type CuttingState = Pick<AppState, 'cutting' | 'winterCuts'>;
type Store = StoreApi<App>;

const setCutting = (store: Store, part: Partial<Cutting>): void =>
  store.setState(({ cutting }) => ({ cutting: { ...cutting, ...part } }));

export const showCutWay = (store: Store, way: number): void =>
  setCutting(store, { way, pointedLetter: null });
export const pointOutCut = (store: Store, pointedLetter: string | null): void =>
  setCutting(store, { pointedLetter });

/** The way that is looked at; null: none. */
export const shownCutWay = ({ winterCuts, cutting }: CuttingState): CutWay | null =>
  winterCuts.result?.ways[cutting.way] ?? null;

/** Whether a cut is among its plant's care: it was accepted, and not taken back. */
export const isPlannedCut = (features: AppState['document']['features'], cut: ProposedCut): boolean => {
  const plant = features.find(({ id }) => id === cut.plant.id)?.properties;
  const care = plant && 'care' in plant && Array.isArray(plant.care) ? plant.care : [];
  return care.some((each) => sameContent(each, cut.option.care));
};

/** Cuts of the way that is looked at of which nothing was said yet. */
export const openCuts = (
  state: CuttingState,
  features: AppState['document']['features'],
): readonly ProposedCut[] =>
  (shownCutWay(state)?.cuts ?? []).filter(
    (cut) => !isPlannedCut(features, cut) && !state.cutting.declined.includes(cut),
  );

/** Writes cuts into the site: one step to undo. From then on they are care like any other. */
export function acceptCuts(store: Store, cuts: readonly ProposedCut[]): void {
  const before = store.getState().document;
  const label = cuts.length === 1 ? `Plan the cut of ${cuts[0].plant.label}` : `Plan ${cuts.length} cuts`;
  store
    .getState()
    .edit(label, (document) =>
      cuts.reduce(
        (site, { plant, option }) => addCare(site, [plant.id], option.care as CareRecord),
        document,
      ),
    );
  const { document } = store.getState();
  if (document === before) return;
  setCutting(store, { pointedLetter: null, features: document.features });
}

/** Refuses cuts: those plants are not proposed again in this sitting. */
export function declineCuts(store: Store, cuts: readonly ProposedCut[]): void {
  const { cutting } = store.getState();
  setCutting(store, {
    declined: [...cutting.declined, ...cuts],
    refused: [...cutting.refused, ...cuts.map(({ plant }) => plant.id)],
    pointedLetter: null,
  });
}

/** Takes back all that was refused in this sitting. */
export const forgetRefused = (store: Store): void => setCutting(store, { refused: [] });

/** Connects the cuts of a winter to the workers. */
export function createCutting(
  store: Store,
  runner: JobRunner,
): { readonly look: () => void; readonly cancel: () => void } {
  const lane = laneOf(store, 'winterCuts');
  // Another site was opened: nobody waits for cuts on the last one.
  lookAtChanges(store, [lane], () => {});
  return {
    cancel: lane.cancel,
    look() {
      const state = store.getState();
      const { ground, document, cutting, shelterOptions, year } = state;
      if (!ground) return;
      lane.clear();
      setCutting(store, { ...NO_CUT_SAID, features: document.features });
      lane.want(
        [{}],
        [
          (signal, onProgress): Promise<WinterCuts> =>
            runWinterCuts(
              runner,
              {
                document,
                wish: { year, refused: cutting.refused },
                scene: sceneOptions(state, ground),
                patches: patchesOf(state, MOST_CELLS),
                field: takenField(document),
                windHeightM: WIND_READING_HEIGHT_M,
                galeMps: GALE_MPS,
                shelter: shelterOptions,
              },
              { signal, onProgress },
            ),
        ],
      );
    },
  };
}
