import { describe, expect, it } from 'vitest';
import type { JobRunner } from '../../src/jobs/messages.ts';
import { runOutlook } from '../../src/jobs/run-outlook.ts';
import type { LightOnGridsRequest, LightScene } from '../../src/light/light-types.ts';

/** A runner whose patches have a share of light that falls from year to year as told. */
function fadingRunner(shareAt: (year: number) => number, asked: number[]): JobRunner {
  return {
    threads: 1,
    run: async (_name, request) => {
      const { scene, places } = request as LightOnGridsRequest;
      asked.push(scene.calendarYear);
      return places.map(({ grid }) => ({
        lightShare: new Float32Array(13 * grid.columns * grid.rows).fill(shareAt(scene.calendarYear)),
      })) as never;
    },
    dispose: () => {},
  };
}

const patch = {
  grid: { columns: 2, rows: 2, cellM: 1, westM: 0, northM: 2 },
  mask: Uint8Array.of(1, 1, 1, 0),
  readingHeightM: 0.1,
  shareToKeep: 0.4,
  areaShare: 0.7,
};
const sceneAt = (year: number) => ({ calendarYear: year }) as LightScene;

describe('the outlook of a patch', () => {
  it('finds the first year that is too dark between the years asked for', async () => {
    const asked: number[] = [];
    const runner = fadingRunner((year) => 1 - 0.042 * year, asked);
    // 1 - 0.042 y falls below 0.4 at y = 14.29: year 15.
    const [outlook] = await runOutlook(runner, [patch], [0, 10, 20, 40], sceneAt);
    expect(outlook.darkFromYear).toBe(15);
    expect(outlook.byYear.get(10)?.meanLightShare).toBeCloseTo(0.58, 6);
    expect(asked.length).toBeLessThanOrEqual(8);
  });

  it('says never for a patch that keeps its light, and year 0 for one that never had it', async () => {
    const [bright] = await runOutlook(
      fadingRunner(() => 0.9, []),
      [patch],
      [0, 20, 40],
      sceneAt,
    );
    expect(bright.darkFromYear).toBeNull();
    const [dark] = await runOutlook(
      fadingRunner(() => 0.1, []),
      [patch],
      [0, 20, 40],
      sceneAt,
    );
    expect(dark.darkFromYear).toBe(0);
  });

  it('counts only a darkness that stays to the end', async () => {
    const dipping = fadingRunner((year) => (year === 20 ? 0.1 : 0.9), []);
    const [outlook] = await runOutlook(dipping, [patch], [0, 20, 40], sceneAt);
    expect(outlook.darkFromYear).toBeNull();
  });
});
