import { serveJobs } from '../src/jobs/serve.ts';

/** A browser's worker: answers any job of the map. */
serveJobs({
  post: (message, transfer) => self.postMessage(message, { transfer }),
  listen: (receive) => {
    self.onmessage = (event) => receive(event.data);
  },
});
