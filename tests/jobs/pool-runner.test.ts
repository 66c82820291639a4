import { describe, expect, it } from 'vitest';
import type { FromWorker, ToWorker } from '../../src/jobs/envelope.ts';
import type { GroundFileJob } from '../../src/jobs/ground-file.ts';
import { createPoolRunner, type WorkerLink } from '../../src/jobs/pool-runner.ts';

/** A worker whose answers the test gives by hand. */
class HandWorker implements WorkerLink {
  readonly sent: ToWorker[] = [];
  receive: (message: FromWorker) => void = () => {};
  crash: (reason: string) => void = () => {};
  ended = false;
  post(message: ToWorker) {
    this.sent.push(message);
  }
  onMessage(receive: (message: FromWorker) => void) {
    this.receive = receive;
  }
  onCrash(crashed: (reason: string) => void) {
    this.crash = crashed;
  }
  terminate() {
    this.ended = true;
  }
}

function poolOf(threads: number) {
  const workers: HandWorker[] = [];
  const runner = createPoolRunner(() => {
    const worker = new HandWorker();
    workers.push(worker);
    return worker;
  }, threads);
  return { runner, workers };
}

const job = (fileName: string) => ({ fileName }) as GroundFileJob;

describe('a pool of workers', () => {
  it('gives each worker one job at a time and keeps the rest in order', async () => {
    const { runner, workers } = poolOf(1);
    const first = runner.run('ground-file', job('a'));
    const second = runner.run('ground-file', job('b'));
    expect(workers[0].sent).toHaveLength(1);
    workers[0].receive({ type: 'result', id: 1, result: 'A', elapsedMs: 1 });
    expect(await first).toBe('A');
    expect(workers[0].sent).toHaveLength(2);
    workers[0].receive({ type: 'result', id: 2, result: 'B', elapsedMs: 1 });
    expect(await second).toBe('B');
  });

  it('fails the job of a crashed worker with a message and serves the next from a fresh one', async () => {
    const { runner, workers } = poolOf(1);
    const doomed = runner.run('ground-file', job('a'));
    workers[0].crash('out of memory');
    await expect(doomed).rejects.toMatchObject({
      code: 'crashed',
      message: expect.stringContaining('out of memory'),
    });
    expect(workers[0].ended).toBe(true);
    const next = runner.run('ground-file', job('b'));
    expect(workers).toHaveLength(2);
    workers[1].receive({ type: 'result', id: 2, result: 'B', elapsedMs: 1 });
    expect(await next).toBe('B');
  });

  it('passes progress on, and a cancel to the worker that has the job', async () => {
    const { runner, workers } = poolOf(1);
    const seen: number[] = [];
    const stop = new AbortController();
    const running = runner.run('ground-file', job('a'), {
      signal: stop.signal,
      onProgress: (done) => seen.push(done),
    });
    workers[0].receive({ type: 'progress', id: 1, done: 0.4 });
    stop.abort();
    expect(workers[0].sent.at(-1)).toEqual({ type: 'cancel', id: 1 });
    workers[0].receive({ type: 'error', id: 1, code: 'cancelled', message: 'Cancelled.' });
    await expect(running).rejects.toMatchObject({ code: 'cancelled' });
    expect(seen).toEqual([0.4]);
  });

  it('drops a waiting job at once when it is cancelled', async () => {
    const { runner, workers } = poolOf(1);
    const first = runner.run('ground-file', job('a'));
    const stop = new AbortController();
    const waiting = runner.run('ground-file', job('b'), { signal: stop.signal });
    stop.abort();
    await expect(waiting).rejects.toMatchObject({ code: 'cancelled' });
    workers[0].receive({ type: 'result', id: 1, result: 'A', elapsedMs: 1 });
    expect(await first).toBe('A');
    expect(workers[0].sent).toHaveLength(1);
  });

  it('refuses a job that is cancelled before it starts, and everything open when it is disposed of', async () => {
    const { runner } = poolOf(1);
    await expect(runner.run('ground-file', job('a'), { signal: AbortSignal.abort() })).rejects.toMatchObject({
      code: 'cancelled',
    });
    const open = runner.run('ground-file', job('b'));
    runner.dispose();
    await expect(open).rejects.toMatchObject({ code: 'cancelled' });
  });
});
