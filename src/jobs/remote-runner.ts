import type { FromWorker } from './envelope.ts';
import type { JobRunner } from './messages.ts';
import { createPoolRunner, type WorkerLink } from './pool-runner.ts';

function startBrowserWorker(): WorkerLink {
  const worker = new Worker(new URL('../../workers/engine.ts', import.meta.url), { type: 'module' });
  return {
    post: (message) => worker.postMessage(message),
    onMessage: (receive) => {
      worker.onmessage = (event: MessageEvent<FromWorker>) => receive(event.data);
    },
    onCrash: (crashed) => {
      worker.onerror = (event) => {
        event.preventDefault();
        crashed(event.message || 'it could not be started');
      };
      worker.onmessageerror = () => crashed('a message could not be read');
    },
    terminate: () => worker.terminate(),
  };
}

/** Runs jobs in the browser's workers, one for each core. */
export const createRemoteRunner = (threads = navigator.hardwareConcurrency): JobRunner =>
  createPoolRunner(startBrowserWorker, threads);
