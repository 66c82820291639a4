import type { StoreApi } from 'zustand/vanilla';
import { followedYear, followsYears } from './followed-year.ts';
import type { App, AppState } from './model.ts';

/** Last year after planting that is followed and can be shown. */
export const LAST_SHOWN_YEAR = 40;
/** Two years a second: slow enough to see what changes. */
const YEAR_MS = 500;

/** Years by hand: the play stops. */
export function stepYears(app: App, by: number): void {
  const year = Math.min(LAST_SHOWN_YEAR, Math.max(0, app.year + by));
  app.show({ year, playing: false });
}

/** Plays from the chosen year on, from the first one if it is the last, or stops where it is. */
export function togglePlay(app: App): void {
  if (app.playing) app.show({ playing: false });
  else app.show({ playing: true, ...(app.year >= LAST_SHOWN_YEAR ? { year: 0 } : {}) });
}

/** A map that follows the years waits for the next one while it is being worked out; any other goes on. */
function waits(state: AppState): boolean {
  const working = state.yearsLook.status === 'computing';
  return working && followsYears(state) && followedYear({ ...state, year: state.year + 1 }) === null;
}

/** Lets the years go by while they are played; whatever else is changed in the site stops them. */
export function keepPlaying(store: StoreApi<App>): () => void {
  let timer: ReturnType<typeof setInterval> | null = null;
  const stop = () => {
    if (timer !== null) clearInterval(timer);
    timer = null;
  };
  const goOn = () => {
    const state = store.getState();
    if (waits(state)) return;
    const year = Math.min(LAST_SHOWN_YEAR, state.year + 1);
    state.show({ year, playing: year < LAST_SHOWN_YEAR });
  };
  const unsubscribe = store.subscribe((state, before) => {
    if (state.playing && state.document !== before.document) state.show({ playing: false });
    else if (!state.playing) stop();
    else timer ??= setInterval(goOn, YEAR_MS);
  });
  return () => {
    stop();
    unsubscribe();
  };
}
