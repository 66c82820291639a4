import { beforeEach, describe, expect, test, vi } from 'vitest';
import { createLane, idleComputation, type Pass } from '../../src/state/lane.ts';
import type { Computation } from '../../src/state/model.ts';
import { BadInputError } from '../../src/units/bad-input.ts';

let computation: Computation<number>;
const seen: Computation<number>[] = [];
const lane = () =>
  createLane<number>(
    () => computation,
    (next) => {
      computation = next;
      seen.push(next);
    },
  );
/** A pass that the test ends by hand. */
function held(): {
  pass: Pass<number>;
  end: (value: number) => void;
  fail: (reason: unknown) => void;
  aborted: () => boolean;
} {
  let end: (value: number) => void = () => {};
  let fail: (reason: unknown) => void = () => {};
  let signal: AbortSignal | null = null;
  const promise = new Promise<number>((resolve, reject) => {
    end = resolve;
    fail = reject;
  });
  return {
    pass: (given, onProgress) => {
      signal = given;
      onProgress(0.5);
      return promise;
    },
    end: (value) => end(value),
    fail: (reason) => fail(reason),
    aborted: () => signal?.aborted ?? false,
  };
}

beforeEach(() => {
  vi.useFakeTimers();
  computation = idleComputation();
  seen.length = 0;
});
const settle = () => vi.advanceTimersByTimeAsync(0);

describe('a lane', () => {
  test('shows the coarse result while the fine one is computed', async () => {
    const coarse = held();
    const fine = held();
    lane().want(['a'], [coarse.pass, fine.pass]);
    await settle();
    expect(computation).toMatchObject({ status: 'computing', progress: 0.25, result: null });
    coarse.end(1);
    await settle();
    expect(computation).toMatchObject({ status: 'computing', result: 1, stale: false });
    fine.end(2);
    await settle();
    expect(computation).toMatchObject({ status: 'ready', result: 2, progress: 1 });
  });

  test('lets the latest request win and drops the late answer of an earlier one', async () => {
    const first = held();
    const second = held();
    const it = lane();
    it.want(['a'], [first.pass]);
    await settle();
    it.want(['b'], [second.pass]);
    expect(first.aborted()).toBe(true);
    await settle();
    first.end(1);
    second.end(2);
    await settle();
    expect(computation).toMatchObject({ status: 'ready', result: 2 });
    expect(seen.some((one) => one.result === 1)).toBe(false);
  });

  test('shows what follows the hand, live and not stale, until the exact answer is there', async () => {
    const it = lane();
    it.want(['a'], [async () => 7]);
    await settle();
    const exact = held();
    it.want(['b'], [exact.pass], 200, true);
    expect(computation).toMatchObject({ status: 'computing', result: 7, stale: false });
    it.show(8);
    expect(computation).toMatchObject({ status: 'computing', result: 8, stale: false, live: true });
    await vi.advanceTimersByTimeAsync(200);
    exact.end(9);
    await settle();
    expect(computation).toMatchObject({ status: 'ready', result: 9, live: false });
    it.show(10);
    expect(computation.result).toBe(9);
  });

  test('shows nothing that comes in for a hand whose thing is no longer followed', async () => {
    const it = lane();
    it.want(['a'], [held().pass], 200, true);
    it.clear();
    it.want(['another site'], [held().pass], 200);
    it.show(8);
    expect(computation).toMatchObject({ status: 'computing', result: null });
  });

  test('a place that the hand goes back to is computed again after others were shown', async () => {
    const it = lane();
    it.want(['a'], [async () => 7]);
    await settle();
    it.want(['b'], [held().pass], 200, true);
    it.show(8);
    it.want(['a'], [async () => 7], 200, true);
    expect(computation).toMatchObject({ status: 'computing', result: 8 });
    await vi.advanceTimersByTimeAsync(200);
    expect(computation).toMatchObject({ status: 'ready', result: 7, live: false });
  });

  test('keeps the last good result, marked stale, while a newer one is computed and when it fails', async () => {
    const it = lane();
    it.want(['a'], [async () => 7]);
    await settle();
    const second = held();
    it.want(['b'], [second.pass]);
    expect(computation).toMatchObject({ status: 'computing', result: 7, stale: true });
    await settle();
    second.fail(new BadInputError('The tree N4 has a crown base above its top.'));
    await settle();
    expect(computation).toMatchObject({
      status: 'failed',
      result: 7,
      stale: true,
      message: 'The tree N4 has a crown base above its top.',
    });
  });

  test('does not start twice for the same key, nor again after a cancel', async () => {
    const work = vi.fn(async () => 1);
    const it = lane();
    it.want(['a'], [work], 50);
    it.want(['a'], [work], 50);
    it.cancel();
    expect(computation.status).toBe('cancelled');
    it.want(['a'], [work], 50);
    await vi.advanceTimersByTimeAsync(200);
    expect(work).not.toHaveBeenCalled();
    it.want(['b'], [work], 50);
    await vi.advanceTimersByTimeAsync(200);
    expect(work).toHaveBeenCalledTimes(1);
  });

  test('waits for a moving hand to rest', async () => {
    const work = vi.fn(async () => 1);
    const it = lane();
    for (let i = 0; i < 5; i++) {
      it.want([i], [work], 100);
      await vi.advanceTimersByTimeAsync(40);
    }
    await vi.advanceTimersByTimeAsync(200);
    expect(work).toHaveBeenCalledTimes(1);
  });

  test('comes back to a result it still holds without computing it again', async () => {
    const it = lane();
    const work = vi.fn(async () => 3);
    it.want(['a'], [work]);
    await settle();
    it.rest(['b']);
    expect(computation.stale).toBe(true);
    it.want(['a'], [work]);
    expect(computation).toMatchObject({ status: 'ready', result: 3, stale: false });
    await settle();
    expect(work).toHaveBeenCalledTimes(1);
  });

  test('marks a result stale when nobody needs a newer one', async () => {
    const it = lane();
    it.want(['a'], [async () => 3]);
    await settle();
    it.rest(['b']);
    expect(computation).toMatchObject({ status: 'ready', result: 3, stale: true });
    it.want(['b'], [async () => 4]);
    await settle();
    expect(computation).toMatchObject({ status: 'ready', result: 4, stale: false });
  });
});
