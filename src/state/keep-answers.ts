import type { StoreApi } from 'zustand/vanilla';
import { createLane, type Lane } from './lane.ts';
import type { App, AppState, Computation } from './model.ts';

/** The parts of the state that are worked out. */
type AnswerName = {
  [Name in keyof AppState]: AppState[Name] extends Computation<unknown> ? Name : never;
}[keyof AppState];
type ResultOf<Name extends AnswerName> = AppState[Name] extends Computation<infer Result> ? Result : never;

/** The lane that keeps one answer of the state. */
export const laneOf = <Name extends AnswerName>(store: StoreApi<App>, name: Name): Lane<ResultOf<Name>> =>
  createLane<ResultOf<Name>>(
    () => store.getState()[name] as unknown as Computation<ResultOf<Name>>,
    (computation) => store.setState({ [name]: computation } as unknown as Partial<App>),
  );

type Forgetful = Pick<Lane<unknown>, 'clear'>;
type Restarted = Forgetful & Pick<Lane<unknown>, 'cancel' | 'again'>;

/**
 * Looks whenever the state changes; what a look itself changes calls for no other.
 * @param lanes forgotten when another site is opened: an answer of the last one is no answer of the next.
 */
export function lookAtChanges(
  store: StoreApi<App>,
  lanes: readonly Forgetful[],
  lookAt: (state: AppState) => void,
): { look(): void; stop(): void } {
  let busy = false;
  let { opening } = store.getState();
  const look = () => {
    if (busy) return;
    busy = true;
    try {
      if (store.getState().opening !== opening) {
        opening = store.getState().opening;
        for (const each of lanes) each.clear();
      }
      lookAt(store.getState());
    } finally {
      busy = false;
    }
  };
  return { look, stop: store.subscribe(look) };
}

export interface KeptAnswers {
  dispose(): void;
  cancel(): void;
  /** Starts again what failed or was stopped and is still wanted. */
  again(): void;
}

/**
 * Keeps several answers current.
 * @param lanes in the order in which a stop goes through them. @param lookAt asks the lanes for what a state needs.
 */
export function keepAnswers(
  store: StoreApi<App>,
  lanes: readonly Restarted[],
  lookAt: (state: AppState) => void,
): KeptAnswers {
  const { look, stop } = lookAtChanges(store, lanes, lookAt);
  look();
  return {
    dispose() {
      stop();
      for (const each of lanes) each.clear();
    },
    cancel() {
      for (const each of lanes) each.cancel();
    },
    again() {
      for (const each of lanes) each.again();
      look();
    },
  };
}
