import { expect, test } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { hoursByPeriod, runViewFrom } from '../../src/jobs/run-view-from.ts';
import type { Surroundings } from '../../src/light/surroundings.ts';
import { computeViewFrom } from '../../src/light/view-from.ts';
import { VIEW_PERIODS, VIEW_SEASON } from '../../src/light/view-from-types.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { gridOf } from '../reference/plain-horizon.ts';
import { plainScene } from './plain-scene.ts';

/** A wood 12 m high from 20 to 60 m south of the origin, 100 m long, as a raster of 1 m cells and as a drawn block. */
const canopy = gridOf(140, 140, 1, (x, y) => (Math.abs(x) < 50 && y < -20 && y > -60 ? 12 : 0));
const raster: Surroundings = { canopy, depthOnPerM: 0.1, depthOffPerM: 0.03, leafClass: 1 };
const block = {
  ring: [-50, -60, 50, -60, 50, -20, -50, -20],
  top: 12,
  depthOn: 0.1,
  depthOff: 0.03,
  leafClass: 1,
};
const nearTree = { x: 3, y: -8, base: 1, top: 8, radius: 2, depthOn: 0.5, thing: 0 };
const asked = { xM: 0, yM: 0, readingHeightM: 0.1, thingCount: 1, month: 6 };

test('woods of a raster are seen and cost what the same wood costs when it is drawn', () => {
  const around = runToEnd(
    computeViewFrom({ ...asked, scene: plainScene({ crowns: [nearTree], surroundings: raster }) }),
  );
  const drawn = runToEnd(
    computeViewFrom({
      ...asked,
      thingCount: 2,
      scene: plainScene({ crowns: [nearTree], pieces: [{ ...block, thing: 1 }] }),
    }),
  );
  expect(around.hours.toThings).toHaveLength(2 * VIEW_PERIODS);
  let most = 0;
  for (let i = 0; i < around.hours.toThings.length; i++)
    most = Math.max(most, Math.abs(around.hours.toThings[i] - drawn.hours.toThings[i]));
  expect(around.hours.toThings[VIEW_PERIODS + VIEW_SEASON]).toBeLessThan(1);
  expect(around.hours.toThings[VIEW_PERIODS + 11]).toBeGreaterThan(50);
  expect(most).toBeLessThan(0.1);
  for (let i = 0; i < around.letThrough.length; i++)
    expect(Math.abs(around.letThrough[i] - drawn.letThrough[i])).toBeLessThan(0.01);
  const [seen, same] = [around, drawn].map(({ outlines }) => outlines.find(({ thing }) => thing === 1)!);
  expect(seen.topAltitudeDeg).toBeCloseTo(same.topAltitudeDeg, 1);
  expect(seen.nearestM).toBeCloseTo(same.nearestM, 1);
  expect(seen.letsThrough).toBeCloseTo(same.letsThrough, 2);
});

test('they have a name, and their own place in the sums', async () => {
  const scene = plainScene({ surroundings: raster });
  const found = await runViewFrom(createLocalRunner(), {
    scene,
    things: [],
    xM: 0,
    yM: 0,
    readingHeightM: 0.1,
    month: 11,
  });
  expect(found.things.map(({ label }) => label)).toEqual(['Woods around']);
  const { open, got, toThings } = hoursByPeriod(found).year;
  expect(toThings[0]).toBeCloseTo(open - got, 1);
});
