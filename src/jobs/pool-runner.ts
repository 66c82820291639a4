import type { FromWorker, ToWorker } from './envelope.ts';
import { JobError, type JobMap, type JobName, type JobRunner, type RunOptions } from './messages.ts';

/** The near side of one worker, whatever platform it runs on. */
export interface WorkerLink {
  post(message: ToWorker): void;
  onMessage(receive: (message: FromWorker) => void): void;
  /** The worker threw outside a job, could not be loaded, or ended. */
  onCrash(crashed: (reason: string) => void): void;
  terminate(): void;
}

interface Job {
  readonly id: number;
  readonly name: JobName;
  readonly request: unknown;
  readonly options: RunOptions;
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: JobError) => void;
}

interface Seat {
  link: WorkerLink | null;
  job: Job | null;
}

/**
 * Runs jobs over a pool of workers, one job a worker at a time, the rest waiting in order. A worker is started when
 * it is first needed; one that crashes fails its job with a message and is replaced for the next.
 */
export function createPoolRunner(startWorker: () => WorkerLink, threads: number): JobRunner {
  const seats: Seat[] = Array.from({ length: Math.max(1, threads) }, () => ({ link: null, job: null }));
  const waiting: Job[] = [];
  let nextId = 1;
  let disposed = false;

  function settle(seat: Seat, finish: (job: Job) => void): void {
    const job = seat.job;
    seat.job = null;
    if (job) finish(job);
    startNext();
  }

  function dropLink(seat: Seat): void {
    seat.link?.terminate();
    seat.link = null;
  }

  function linkFor(seat: Seat): WorkerLink {
    if (seat.link) return seat.link;
    const link = startWorker();
    seat.link = link;
    link.onMessage((message) => {
      const job = seat.job;
      if (seat.link !== link || !job || message.id !== job.id) return;
      if (message.type === 'progress') job.options.onProgress?.(message.done);
      else if (message.type === 'result') settle(seat, () => job.resolve(message.result));
      else settle(seat, () => job.reject(new JobError(message.code, message.message)));
    });
    link.onCrash((reason) => {
      if (seat.link !== link) return;
      dropLink(seat);
      settle(seat, (job) =>
        job.reject(
          new JobError(
            'crashed',
            `The computation stopped unexpectedly (${reason}). Nothing is lost: change something or try again.`,
          ),
        ),
      );
    });
    return link;
  }

  /** Jobs that must run here come before those that may run anywhere. */
  function nextFor(index: number): Job | undefined {
    const own = waiting.findIndex((job) => job.options.seat === index);
    const place = own >= 0 ? own : waiting.findIndex((job) => job.options.seat === undefined);
    return place < 0 ? undefined : waiting.splice(place, 1)[0];
  }

  function startNext(): void {
    if (disposed) return;
    for (const [index, seat] of seats.entries()) {
      if (seat.job) continue;
      const job = nextFor(index);
      if (!job) continue;
      seat.job = job;
      linkFor(seat).post({ type: 'run', id: job.id, name: job.name, request: job.request });
    }
  }

  function cancel(job: Job): void {
    const place = waiting.indexOf(job);
    if (place >= 0) {
      waiting.splice(place, 1);
      job.reject(new JobError('cancelled', 'Cancelled.'));
      return;
    }
    seats.find((seat) => seat.job === job)?.link?.post({ type: 'cancel', id: job.id });
  }

  function run<N extends JobName>(
    name: N,
    request: JobMap[N][0],
    options: RunOptions = {},
  ): Promise<JobMap[N][1]> {
    if (options.signal?.aborted) return Promise.reject(new JobError('cancelled', 'Cancelled.'));
    return new Promise((resolve, reject) => {
      // Let go of the signal when done: one signal often stops hundreds of jobs.
      const stopListening = () => options.signal?.removeEventListener('abort', stop);
      const job: Job = {
        id: nextId++,
        name,
        request,
        options,
        resolve: (result) => {
          stopListening();
          resolve(result as JobMap[N][1]);
        },
        reject: (error) => {
          stopListening();
          reject(error);
        },
      };
      const stop = () => cancel(job);
      options.signal?.addEventListener('abort', stop, { once: true });
      waiting.push(job);
      startNext();
    });
  }

  return {
    threads: seats.length,
    run,
    dispose() {
      disposed = true;
      const unfinished = [...waiting, ...seats.flatMap((seat) => seat.job ?? [])];
      waiting.length = 0;
      for (const seat of seats) {
        seat.job = null;
        dropLink(seat);
      }
      for (const job of unfinished) job.reject(new JobError('cancelled', 'Cancelled.'));
    },
  };
}
