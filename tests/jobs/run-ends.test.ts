import { describe, expect, test } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { runEnds } from '../../src/jobs/run-ends.ts';
import { causesBySize } from '../../src/jobs/run-ends-causes.ts';
import { runLight } from '../../src/jobs/run-light.ts';
import { runLightEnds } from '../../src/jobs/run-light-ends.ts';
import { runShelterEnds } from '../../src/jobs/run-shelter-ends.ts';
import type { LightResult } from '../../src/light/light-types.ts';
import { cellCount } from '../../src/numeric/grid.ts';
import { sameContent } from '../../src/numeric/same-content.ts';
import { lightScene, shelterScene } from '../../src/scene/build-scene.ts';
import { atEnd, CAUSES, SCENE_ENDS, type SceneEnd } from '../../src/scene/ends.ts';
import { siteGrid } from '../../src/scene/site-grid.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { smallSite } from '../state/small-site.ts';

const document = smallSite();
const frame = siteFrame(document);
const { ground } = siteGround(document, frame, null);
const expected = { year: 20, layout: null, pace: 'usual', frame, ground, weather: null } as const;
const grid = siteGrid(document, frame, { cellM: 2, layout: null });
const sceneAt = (end: SceneEnd | null) => lightScene(document, atEnd(expected, end)).scene;
const where = { grid, readingHeightM: 0.1 };
const runner = createLocalRunner();
const seasonShare = ({ lightShare }: LightResult) => lightShare.subarray(12 * cellCount(grid));
const everywhere = new Uint8Array(cellCount(grid)).fill(1);
const meanOf = (values: ArrayLike<number>) =>
  Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;

describe('what would change a map', () => {
  test('each size is the difference of two maps computed directly, the largest first, the engine last', async () => {
    const at = await runLightEnds(runner, sceneAt, where, (result) => result, {});
    const causes = causesBySize(at, CAUSES, seasonShare, everywhere, { mean: 0.0001, p99: 0.001 })!;
    const direct = async (end: SceneEnd | null) =>
      meanOf(seasonShare(await runLight(runner, { ...where, scene: sceneAt(end) })));
    const usual = await direct(null);
    for (const { cause, ends } of causes) {
      if (cause === 'engine') continue;
      for (const { end, mean } of ends) expect(mean - usual).toBeCloseTo((await direct(end)) - usual, 9);
      expect(ends[0].mean).toBeLessThan(usual);
      expect(ends[1].mean).toBeGreaterThan(usual);
    }
    const sizes = causes.map(({ ends }) => Math.max(...ends.map(({ mean }) => Math.abs(mean - usual))));
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    expect(causes.map(({ cause }) => cause).at(-1)).toBe('engine');
    expect(causes).toHaveLength(4);
  });

  test('wider crowns, denser foliage and fast growth darken the ground', async () => {
    const at = await runLightEnds(runner, sceneAt, where, (result) => result, {});
    const mean = (end: SceneEnd) => meanOf(seasonShare(at.ends.get(end)!));
    const usual = meanOf(seasonShare(at.usual));
    for (const dark of ['wide-crowns', 'dense-foliage', 'fast-growth'] as const)
      expect(mean(dark)).toBeLessThan(usual);
    for (const light of ['narrow-crowns', 'open-foliage', 'slow-growth'] as const)
      expect(mean(light)).toBeGreaterThan(usual);
  });

  test('an engine error larger than a cause stands before it, an equal one after', () => {
    const at = {
      usual: [1, 1],
      ends: new Map<SceneEnd, number[]>([
        ['slow-growth', [1.5, 1.5]],
        ['fast-growth', [0.5, 0.5]],
        ['dense-foliage', [0.75, 0.75]],
        ['open-foliage', [1.25, 1.25]],
      ]),
      finer: null,
    };
    const order = (mean: number) =>
      causesBySize(at, ['growth', 'foliage'], (values) => values, [1, 1], { mean, p99: mean })!.map(
        ({ cause }) => cause,
      );
    expect(order(0.1)).toEqual(['growth', 'foliage', 'engine']);
    expect(order(0.25)).toEqual(['growth', 'foliage', 'engine']);
    expect(order(0.3)).toEqual(['growth', 'engine', 'foliage']);
    expect(order(0.6)).toEqual(['engine', 'growth', 'foliage']);
  });

  test('an engine that states no error is asked in finer steps, and the difference is its error', () => {
    const at = {
      usual: [1, 1, 1, 1],
      ends: new Map<SceneEnd, number[]>(
        (['slow-growth', 'fast-growth'] as const).map((end) => [end, [1, 1, 1, 1]]),
      ),
      finer: [1, 1, 1.25, 1.25],
    };
    const [engine, growth] = causesBySize(at, ['growth'], (values) => values, [1, 1, 1, 1], null)!;
    expect(growth.cause).toBe('growth');
    expect(engine.ends.map(({ mean }) => mean)).toEqual([0.875, 1.125]);
    expect(engine.ends[0].widelyBy).toBe(0.25);
    expect(causesBySize(at, ['growth'], (values) => values, [0, 0, 0, 0], null)).toBeNull();
  });

  test('an end that leaves the scene as it is costs nothing, and a known answer is not asked again', async () => {
    const asked: string[] = [];
    const done: number[] = [];
    const at = await runEnds(
      {
        ends: ['wide-crowns', 'slow-growth'],
        sceneAt: (end) => ({ trees: end === 'slow-growth' ? [1] : [2] }),
        ask: async ({ trees }) => {
          asked.push(String(trees));
          return trees[0];
        },
        askFiner: null,
        usual: 2,
      },
      { onProgress: (share) => done.push(share) },
    );
    expect(asked).toEqual(['1']);
    expect([at.usual, at.ends.get('wide-crowns'), at.ends.get('slow-growth'), at.finer]).toEqual([
      2,
      2,
      1,
      null,
    ]);
    expect(done.at(-1)).toBe(1);
  });

  test('shelter is asked once more from finer directions', async () => {
    const at = await runShelterEnds(
      runner,
      (end) => shelterScene(document, atEnd(expected, end)).scene,
      {
        grid,
        readingHeightM: 1.5,
        galeMps: 10.8,
        options: USUAL_SHELTER_OPTIONS,
      },
      (result) => result,
      {},
    );
    expect([...at.ends.keys()]).toEqual([...SCENE_ENDS]);
    expect(at.finer).not.toBeNull();
    expect(at.finer!.directions).toBeGreaterThanOrEqual(at.usual.directions);
  });

  test('scenes are the same by what they say, not by who holds it', () => {
    const scene = () => ({ a: Float32Array.of(1, Number.NaN), b: { c: 'x' } });
    expect(sameContent(scene(), scene())).toBe(true);
    expect(sameContent(scene(), { ...scene(), b: { c: 'y' } })).toBe(false);
    expect(sameContent(scene(), { ...scene(), a: Float32Array.of(1) })).toBe(false);
    expect(sameContent({}, { a: undefined })).toBe(false);
  });
});
