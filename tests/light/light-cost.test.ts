import { expect, test } from 'vitest';
import { computeLight } from '../../src/light/compute-light.ts';
import { computeLightCost } from '../../src/light/light-cost.ts';
import type { LightCostRequest, LightScene } from '../../src/light/light-types.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { plainScene } from './plain-scene.ts';

const grid = { columns: 12, rows: 12, cellM: 1, westM: -6, northM: 6 };
const near = { x: 0, y: -4, base: 1, top: 8, radius: 3, depthOn: 0.5, thing: 0 };
const behind = { x: 0, y: -9, base: 1, top: 8, radius: 3, depthOn: 0.5, thing: 1 };
const far = { x: 300, y: 300, base: 1, top: 8, radius: 3, depthOn: 0.5, thing: 2 };
const wall = { ring: [-6, 7, 6, 7, 6, 7.3, -6, 7.3], base: -1, top: 3, thing: 3 };
// April to September, so that whole months add up to the season.
const growingDay = Uint8Array.from({ length: 365 }, (_, d) => Number(d >= 90 && d < 273));

function meanSeason(scene: LightScene): { hoursADay: number; share: number } {
  const result = runToEnd(computeLight({ scene, grid, readingHeightM: 0.1 }));
  const cells = grid.columns * grid.rows;
  let hours = 0;
  let share = 0;
  for (let i = 0; i < cells; i++) {
    for (let month = 3; month < 9; month++) hours += result.directHours[month * cells + i];
    share += result.lightShare[12 * cells + i];
  }
  return { hoursADay: hours / cells / 183, share: share / cells };
}

test('what a thing costs is what comes back when it is taken away', () => {
  const crowns = [near, behind, far];
  const request: LightCostRequest = {
    scene: plainScene({ crowns, pieces: [wall], growingDay }),
    grid,
    readingHeightM: 0.1,
    mask: new Uint8Array(144).fill(1),
    thingCount: 4,
  };
  const cost = runToEnd(computeLightCost(request));
  const all = meanSeason(request.scene);
  const without = [
    plainScene({ crowns: [behind, far], pieces: [wall], growingDay }),
    plainScene({ crowns: [near, far], pieces: [wall], growingDay }),
    plainScene({ crowns: [near, behind], pieces: [wall], growingDay }),
    plainScene({ crowns, growingDay }),
  ].map(meanSeason);
  without.forEach((gone, thing) => {
    expect(cost.directHoursADay[thing]).toBeCloseTo(gone.hoursADay - all.hoursADay, 3);
    expect(cost.lightShare[thing]).toBeCloseTo(gone.share - all.share, 4);
  });
  expect(cost.directHoursADay[0]).toBeGreaterThan(0.2);
  expect(cost.directHoursADay[2]).toBeLessThan(0.001);
});

test('only the counted cells count', () => {
  const scene = plainScene({ crowns: [near], growingDay });
  const cost = (mask: Uint8Array) =>
    runToEnd(computeLightCost({ scene, grid, readingHeightM: 0.1, mask, thingCount: 1 })).lightShare[0];
  const southRows = Uint8Array.from({ length: 144 }, (_, i) => Number(i >= 96));
  const northRows = Uint8Array.from({ length: 144 }, (_, i) => Number(i < 48));
  expect(cost(southRows)).toBeGreaterThan(2 * cost(northRows));
  expect(cost(new Uint8Array(144))).toBe(0);
});

test('a large field is thinned out without moving the answer', () => {
  const scene = plainScene({ crowns: [{ ...near, y: 0, x: 0 }], growingDay });
  const cost = (cellM: number) => {
    const edge = Math.round(48 / cellM);
    return runToEnd(
      computeLightCost({
        scene,
        grid: { columns: edge, rows: edge, cellM, westM: -24, northM: 24 },
        readingHeightM: 0.1,
        mask: new Uint8Array(edge * edge).fill(1),
        thingCount: 1,
      }),
    ).lightShare[0];
  };
  // 9216 cells are thinned, 2304 are not.
  expect(Math.abs(cost(0.5) / cost(1) - 1)).toBeLessThan(0.02);
});
