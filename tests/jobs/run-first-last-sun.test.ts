import { expect, test } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { runFirstLastSun } from '../../src/jobs/run-first-last-sun.ts';
import { plainScene } from '../light/plain-scene.ts';

test('first and last sun are the same however many threads share the rows', async () => {
  const scene = plainScene({ crowns: [{ x: 10, y: -8, base: 1, top: 9, radius: 4, depthOn: 0.6 }] });
  const request = {
    scene,
    grid: { columns: 6, rows: 30, cellM: 1, westM: 0, northM: 10 },
    readingHeightM: 0.1,
  };
  const runner = createLocalRunner();
  const alone = await runFirstLastSun(runner, request);
  const shared = await runFirstLastSun({ ...runner, threads: 3 }, request);
  expect(shared.grid).toEqual(alone.grid);
  expect(shared.days).toEqual(alone.days);
  for (const band of ['firstMin', 'lastMin', 'sunHours'] as const) {
    expect(shared[band]).toHaveLength(12 * 180);
    // A band's rows are counted from its own corner: rounding, a thousandth of a minute and far less.
    shared[band].forEach((value, i) => {
      expect(value).toBeCloseTo(alone[band][i], 3);
    });
  }
});
