import type { Steps } from '../numeric/steps.ts';
import { JobError, type RunOptions } from './messages.ts';

/** How long a kernel may hold the thread before messages (a cancel, a redraw) get their turn. */
const SLICE_MS = 30;

/** Lets the event loop run once. A message channel is not slowed down as nested timers are. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      channel.port1.close();
      resolve();
    };
    channel.port2.postMessage(null);
  });
}

/**
 * Runs a kernel to its end, pausing every few tens of milliseconds to report progress and to see a cancel.
 * @throws JobError `cancelled` when the signal is aborted.
 */
export async function drive<Result>(steps: Steps<Result>, options: RunOptions = {}): Promise<Result> {
  const { signal, onProgress } = options;
  let sliceStartMs = performance.now();
  for (;;) {
    if (signal?.aborted) throw new JobError('cancelled', 'Cancelled.');
    const step = steps.next();
    if (step.done) return step.value;
    if (performance.now() - sliceStartMs > SLICE_MS) {
      onProgress?.(step.value);
      await breathe();
      sliceStartMs = performance.now();
    }
  }
}
