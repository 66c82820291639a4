import { parentPort } from 'node:worker_threads';
import { serveJobs } from '../src/jobs/serve.ts';

/** A worker thread of Node: answers any job of the map. */
serveJobs({
  post: (message, transfer) => parentPort?.postMessage(message, transfer),
  listen: (receive) => parentPort?.on('message', receive),
});
