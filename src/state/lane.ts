import { BadInputError } from '../units/bad-input.ts';
import { type Key, sameKey } from './answer-keys.ts';
import type { Computation } from './model.ts';

/** One pass of a computation: coarse first, then fine. Rejects with an AbortError-like error when the signal fires. */
export type Pass<Result> = (signal: AbortSignal, onProgress: (done: number) => void) => Promise<Result>;

export interface Lane<Result> {
  /**
   * Wants the passes' last result for `key`. The same key as the one under way or ready does nothing; another key
   * aborts what runs (the latest wins) and starts after `waitMs`, so that a moving hand does not start a hundred.
   * @param follows what is shown follows the key by other means (see `show`) and is not called stale until then
   */
  want(key: Key, passes: readonly Pass<Result>[], waitMs?: number, follows?: boolean): void;
  /** Shows a result that is nearly that of the key wanted, until the passes have theirs; nothing where it follows none. */
  show(result: Result): void;
  /** Nobody needs a newer result: stops what runs; a result of another key is marked stale. */
  rest(key: Key): void;
  /** The person stops it; the last good result stays, and the same key is not started again by itself. */
  cancel(): void;
  /** What failed or was stopped starts again when it is next wanted. */
  again(): void;
  /** Forgets everything: another site was opened. */
  clear(): void;
}

export const idleComputation = <Result>(): Computation<Result> => ({
  status: 'idle',
  progress: 0,
  result: null,
  stale: false,
  live: false,
  message: null,
});

/** One sentence for the person; anything else than bad input or a crash says what to do next. */
function sentence(reason: unknown): string {
  const code = (reason as { code?: string } | null)?.code;
  if (reason instanceof BadInputError || code === 'bad-input') return (reason as Error).message;
  if (code === 'crashed')
    return 'The computation stopped unexpectedly. Nothing is lost: change anything, or have it worked out again.';
  const text = reason instanceof Error ? reason.message : String(reason);
  return `This could not be worked out (${text}). Nothing is lost: change anything, or have it worked out again.`;
}

/** Keeps one `Computation` current: the latest request wins, the last good result stays until a newer one is there. */
export function createLane<Result>(
  read: () => Computation<Result>,
  write: (computation: Computation<Result>) => void,
): Lane<Result> {
  let wantedKey: Key | null = null;
  let resultKey: Key | null = null;
  /** The result at hand is the last pass's, not a coarse one. */
  let finished = false;
  /** What is wanted is followed by other means. */
  let followed = false;
  let running: AbortController | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;

  const patch = (part: Partial<Computation<Result>>) => write({ ...read(), ...part });
  const stop = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    running?.abort();
    running = null;
  };

  const start = async (key: Key, passes: readonly Pass<Result>[]) => {
    const controller = new AbortController();
    running = controller;
    const current = () => running === controller && !controller.signal.aborted;
    try {
      for (let index = 0; index < passes.length; index++) {
        const from = index / passes.length;
        const result = await passes[index](controller.signal, (done) => {
          if (current()) patch({ progress: from + done / passes.length });
        });
        if (!current()) return;
        resultKey = key;
        const last = index === passes.length - 1;
        finished = last;
        patch({
          result,
          stale: false,
          live: false,
          message: null,
          status: last ? 'ready' : 'computing',
          progress: (index + 1) / passes.length,
        });
      }
    } catch (reason) {
      if (!current()) return;
      patch({ status: 'failed', message: sentence(reason), stale: read().result !== null });
    } finally {
      if (running === controller) running = null;
    }
  };

  return {
    want(key, passes, waitMs = 0, follows = false) {
      if (sameKey(wantedKey, key)) return;
      wantedKey = key;
      followed = follows;
      stop();
      if (finished && sameKey(resultKey, key)) {
        patch({ status: 'ready', progress: 1, stale: false, message: null });
        return;
      }
      const { result, stale } = read();
      patch({ status: 'computing', progress: 0, message: null, stale: follows ? stale : result !== null });
      timer = setTimeout(() => {
        timer = null;
        void start(key, passes);
      }, waitMs);
    },
    show(result) {
      if (wantedKey === null || !followed || read().status !== 'computing') return;
      finished = false;
      patch({ result, stale: false, live: true });
    },
    rest(key) {
      if (sameKey(wantedKey, key)) return;
      wantedKey = null;
      stop();
      const stale = read().result !== null && !sameKey(resultKey, key);
      const status = read().result === null ? 'idle' : 'ready';
      if (read().stale !== stale || read().status !== status) patch({ status, stale, progress: 0 });
    },
    cancel() {
      if (running === null && timer === null) return;
      stop();
      patch({ status: 'cancelled', progress: 0, message: null });
    },
    again() {
      const { status } = read();
      if (status === 'failed' || status === 'cancelled') wantedKey = null;
    },
    clear() {
      stop();
      wantedKey = null;
      resultKey = null;
      finished = false;
      write(idleComputation());
    },
  };
}
