import type { StoreApi } from 'zustand/vanilla';
import type { Key } from './answer-keys.ts';
import { type KeptAnswers, keepAnswers } from './keep-answers.ts';
import { createLane, type Pass } from './lane.ts';
import type { App, AppState, Computation } from './model.ts';

/**
 * Keeps one answer current while somebody looks at it.
 * @param passesOf how it is worked out; null while nobody looks.
 * @param restMs a hand that moves rests this long before anything starts.
 */
export function keepWhileOpen<Result>(
  store: StoreApi<App>,
  answer: {
    read(state: AppState): Computation<Result>;
    write(computation: Computation<Result>): Partial<App>;
    keyOf(state: AppState): Key;
  },
  passesOf: (state: AppState) => readonly Pass<Result>[] | null,
  restMs = 0,
): KeptAnswers {
  const lane = createLane<Result>(
    () => answer.read(store.getState()),
    (computation) => store.setState(answer.write(computation)),
  );
  return keepAnswers(store, [lane], (state) => {
    const passes = passesOf(state);
    if (passes) lane.want(answer.keyOf(state), passes, restMs);
    else lane.rest(answer.keyOf(state));
  });
}
