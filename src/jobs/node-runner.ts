import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { FromWorker } from './envelope.ts';
import type { JobRunner } from './messages.ts';
import { createPoolRunner, type WorkerLink } from './pool-runner.ts';

function startNodeWorker(): WorkerLink {
  const worker = new Worker(new URL('../../workers/engine-node.ts', import.meta.url), {
    // The worker is TypeScript as well: it needs the same loader as this thread.
    execArgv: ['--import', import.meta.resolve('tsx')],
  });
  return {
    post: (message) => worker.postMessage(message),
    onMessage: (receive) => worker.on('message', (message: FromWorker) => receive(message)),
    onCrash: (crashed) => {
      worker.on('error', (error) => crashed(error.message));
      worker.on('exit', (code) => crashed(`it ended with code ${code}`));
    },
    terminate: () => void worker.terminate(),
  };
}

/** Runs jobs in worker threads of Node, one for each core unless told otherwise. */
export const createNodeRunner = (threads = availableParallelism()): JobRunner =>
  createPoolRunner(startNodeWorker, threads);
