import { BadInputError } from '../units/bad-input.ts';
import { type FromWorker, type ToWorker, transferablesIn } from './envelope.ts';
import { handleJob } from './handlers.ts';
import { JobError, type JobErrorCode } from './messages.ts';

/** The worker's side of the wire: a browser's worker scope or a Node parent port. */
export interface ServingPort {
  post(message: FromWorker, transfer: ArrayBuffer[]): void;
  listen(receive: (message: ToWorker) => void): void;
}

function codeOf(error: unknown): JobErrorCode {
  if (error instanceof JobError) return error.code;
  return error instanceof BadInputError ? 'bad-input' : 'failed';
}

/** Answers jobs until the worker ends. */
export function serveJobs(port: ServingPort): void {
  const running = new Map<number, AbortController>();
  port.listen(async (message) => {
    if (message.type === 'cancel') {
      running.get(message.id)?.abort();
      return;
    }
    const { id, name } = message;
    const cancel = new AbortController();
    running.set(id, cancel);
    const startMs = performance.now();
    try {
      // The runner's typed `run` is the only sender, so name and request belong together.
      const result = await handleJob(name, message.request as never, {
        signal: cancel.signal,
        onProgress: (done) => port.post({ type: 'progress', id, done }, []),
      });
      const elapsedMs = performance.now() - startMs;
      port.post({ type: 'result', id, result, elapsedMs }, transferablesIn(result));
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      port.post({ type: 'error', id, code: codeOf(error), message: text }, []);
    } finally {
      running.delete(id);
    }
  });
}
