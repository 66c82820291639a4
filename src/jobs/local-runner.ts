import { handleJob } from './handlers.ts';
import type { JobRunner } from './messages.ts';

/** Runs every job in this thread. */
export function createLocalRunner(): JobRunner {
  return {
    threads: 1,
    run: (name, request, options = {}) => handleJob(name, request, options),
    dispose: () => {},
  };
}
