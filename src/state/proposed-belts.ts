import type { StoreApi } from 'zustand/vanilla';
import type { BeltAlternative, BeltProposals, ProposedBelt } from '../belts/propose-result.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { runProposeBelts } from '../jobs/run-propose-belts.ts';
import { addFeatures } from '../site/actions/add-feature.ts';
import { featuresOfKind, takenField } from '../site/chosen-features.ts';
import type { FeatureOf } from '../site/document.ts';
import { lookAtChanges } from './keep-answers.ts';
import { createLane } from './lane.ts';
import type { App, AppState } from './model.ts';
import { NOTHING_SAID, type Proposing } from './proposing.ts';
import { READING_HEIGHT_M, WIND_READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import { GALE_MPS } from './work.ts';

type ProposingState = Pick<AppState, 'proposing' | 'proposals'>;
type Store = StoreApi<App>;

const setProposing = (store: Store, part: Partial<Proposing>): void =>
  store.setState(({ proposing }) => ({ proposing: { ...proposing, ...part } }));

/** The field that belts are proposed for; null where none is drawn. */
export function proposedField({ document, proposing }: Pick<AppState, 'document' | 'proposing'>) {
  const fields: readonly FeatureOf<'field'>[] = featuresOfKind(document.features, 'field');
  return fields.find(({ id }) => id === proposing.wish.fieldId) ?? takenField(document) ?? fields[0] ?? null;
}

export const askOtherwise = (store: Store, wish: Partial<Proposing['wish']>): void =>
  store.setState(({ proposing }) => ({ proposing: { ...proposing, wish: { ...proposing.wish, ...wish } } }));

export const showWay = (store: Store, way: number): void => setProposing(store, { way, pointedLetter: null });
export const pointOut = (store: Store, pointedLetter: string | null): void =>
  setProposing(store, { pointedLetter });

/** The way that is looked at; null: none. */
export const shownWay = ({ proposals, proposing }: ProposingState): BeltAlternative | null =>
  proposals.result?.alternatives[proposing.way] ?? null;

/** Its belts that nothing was said of yet. */
export const openBelts = (state: ProposingState): readonly ProposedBelt[] =>
  (shownWay(state)?.belts ?? []).filter(
    (belt) => !state.proposing.accepted.includes(belt) && !state.proposing.declined.includes(belt),
  );

/** Plans belts of a proposal: one step to undo. From then on they are belts like any other, to be moved and reshaped. */
export function acceptBelts(store: Store, belts: readonly ProposedBelt[]): void {
  const before = store.getState().document;
  const label = belts.length === 1 ? `Plan ${belts[0].name}` : `Plan ${belts.length} belts`;
  store.getState().edit(
    label,
    (document) =>
      addFeatures(
        document,
        belts.map(({ drawn }) => drawn),
      ).document,
  );
  const { document, proposing } = store.getState();
  if (document === before) return;
  setProposing(store, {
    accepted: [...proposing.accepted, ...belts],
    pointedLetter: null,
    features: document.features,
  });
}

/** Refuses belts of a proposal: nothing is proposed there again in this sitting. */
export function declineBelts(store: Store, belts: readonly ProposedBelt[]): void {
  const { proposing } = store.getState();
  setProposing(store, {
    declined: [...proposing.declined, ...belts],
    refused: [...proposing.refused, ...belts.map(({ line }) => line)],
    pointedLetter: null,
  });
}

/** Connects proposals to the workers. */
export function createProposing(
  store: Store,
  runner: JobRunner,
): { readonly propose: () => void; readonly cancel: () => void } {
  const lane = createLane<BeltProposals>(
    () => store.getState().proposals,
    (proposals) => store.setState({ proposals }),
  );
  // Another site was opened: nobody waits for belts on the last one.
  lookAtChanges(store, [lane], () => {});
  return {
    cancel: lane.cancel,
    propose() {
      const state = store.getState();
      const field = proposedField(state);
      const { ground, document, proposing, shelterOptions } = state;
      if (!field || !ground) return;
      lane.clear();
      setProposing(store, { ...NOTHING_SAID, features: document.features });
      lane.want(
        [{}],
        [
          (signal, onProgress) =>
            runProposeBelts(
              runner,
              {
                document,
                wish: { ...proposing.wish, fieldId: field.id },
                refused: proposing.refused,
                scene: sceneOptions(state, ground, proposing.wish.year),
                readingHeightM: WIND_READING_HEIGHT_M,
                galeMps: GALE_MPS,
                options: shelterOptions,
                lightHeightM: READING_HEIGHT_M.ground,
              },
              { signal, onProgress },
            ),
        ],
      );
    },
  };
}
