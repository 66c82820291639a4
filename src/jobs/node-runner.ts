import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { FromWorker } from './envelope.ts';
import type { JobRunner } from './messages.ts';
import { createPoolRunner, type WorkerLink } from './pool-runner.ts';

/**
 * In the bundled command line the worker is bundled beside. From the sources it is TypeScript as well, and Node 20 gives
 * a worker thread no loader of the main thread's: it registers its own before it loads the entry.
 */
const start = (): string =>
  import.meta.url.endsWith('.ts')
    ? `import(${JSON.stringify(import.meta.resolve('tsx/esm/api'))}).then(({ register }) => {
  register();
  return import(${JSON.stringify(new URL('../../workers/engine-node.ts', import.meta.url).href)});
})`
    : `import(${JSON.stringify(new URL('engine-node.mjs', import.meta.url).href)})`;

function startNodeWorker(): WorkerLink {
  // Empty data and not none: a package of the raster reader takes members from it when it loads in a thread.
  const worker = new Worker(start(), { eval: true, execArgv: [], workerData: {} });
  return {
    post: (message) => worker.postMessage(message),
    onMessage: (receive) => worker.on('message', (message: FromWorker) => receive(message)),
    onCrash: (crashed) => {
      worker.on('error', (error) => crashed(error.message));
      worker.on('messageerror', () => crashed('a message could not be read'));
      worker.on('exit', (code) => crashed(`it ended with code ${code}`));
    },
    terminate: () => void worker.terminate(),
  };
}

/** Runs jobs in worker threads of Node, one for each core unless told otherwise. */
export const createNodeRunner = (threads = availableParallelism()): JobRunner =>
  createPoolRunner(startNodeWorker, threads);
