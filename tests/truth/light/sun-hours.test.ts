import { expect, test } from 'vitest';
import { computeLight } from '../../../src/light/compute-light.ts';
import { USUAL } from '../../../src/light/light-plan.ts';
import type { LightScene } from '../../../src/light/light-types.ts';
import type { Grid } from '../../../src/numeric/grid.ts';
import { runToEnd } from '../../../src/numeric/steps.ts';
import type { QuadratureSteps } from '../../../src/sun/year-quadrature.ts';
import { degToRad } from '../../../src/units/angle.ts';
import { plainScene, yearOf } from '../../light/plain-scene.ts';

// Hours of sun in 2026 at longitude 0, counted in 5-minute steps with two independent ephemerides (computed for this
// project). Latitude; open; wall due south at profile angle 15, 30, 45; due north; ring horizon at 10, 20, 30.
const HOURS = [
  [60, 4417.2, [3565.3, 2951.7, 2330.0], [4092.8, 3923.2, 3803.8], [3075.6, 2084.3, 1311.2]],
  [45, 4400.8, [4092.8, 3241.1, 2627.4], [4231.2, 4111.8, 4008.7], [3635.9, 2782.8, 1858.5]],
  [-43, 4360.2, [4209.3, 4100.7, 4001.8], [4070.8, 3209.7, 2566.9], [3627.3, 2827.1, 1875.3]],
] as const;
const ANGLES = [15, 30, 45];
const RINGS = [10, 20, 30];

/** The usual directions, and many more: what is left then is not the engine's choice of directions. */
const MANY_LEVELS = { declinationLevels: 240, minutes: 4 };
const MANY_MINUTES = { declinationLevels: 122, minutes: 2 };

function hoursAtCentre(scene: LightScene, steps = USUAL.sun): number {
  const grid = { columns: 1, rows: 1, cellM: 0.2, westM: -0.1, northM: 0.1 };
  return yearOf(
    runToEnd(computeLight({ scene, grid, readingHeightM: 0 }, { ...USUAL, sun: steps })).directHours,
    0,
  );
}

/** A wall of a profile angle as seen from the origin, from end to end of the world. */
function wall(latDeg: number, towardsY: number, profileDeg: number): LightScene {
  const near = towardsY * 20;
  const south = Math.min(near, near + towardsY);
  return plainScene({
    latDeg,
    pieces: [
      {
        ring: [-1e5, south, 1e5, south, 1e5, south + 1, -1e5, south + 1],
        top: 20 * Math.tan(degToRad(profileDeg)),
      },
    ],
  });
}

/** A plain of 60 m about the origin, and around it land whose top stands at one angle as seen from there. */
function bowl(angleDeg: number): Grid {
  const edge = 201;
  const values = new Float32Array(edge * edge);
  for (let r = 0; r < edge; r++)
    for (let c = 0; c < edge; c++) {
      const away = Math.hypot((c - 100) * 2, (r - 100) * 2);
      values[r * edge + c] = away > 60 ? away * Math.tan(degToRad(angleDeg)) : 0;
    }
  return { columns: edge, rows: edge, cellM: 2, westM: -201, northM: 201, values };
}

test.each(HOURS)('at latitude %d the engine counts the published hours on open ground', (latDeg, open) => {
  expect(Math.abs(hoursAtCentre(plainScene({ latDeg })) - open)).toBeLessThan(2);
});

test.each(HOURS)(
  'at latitude %d it counts them behind long walls',
  (latDeg, open, dueSouth, dueNorth) => {
    const cases = [
      ...ANGLES.map((angle, k) => ({ scene: wall(latDeg, -1, angle), hours: dueSouth[k] })),
      ...ANGLES.map((angle, k) => ({ scene: wall(latDeg, 1, angle), hours: dueNorth[k] })),
    ];
    checkHours(`walls at ${latDeg}`, open, cases, MANY_LEVELS);
  },
  180_000,
);

test.each(HOURS)(
  'at latitude %d it counts them in a bowl of land',
  (latDeg, open, _south, _north, rings) => {
    const cases = RINGS.map((angle, k) => ({
      scene: plainScene({ latDeg, ground: bowl(angle) }),
      hours: rings[k],
    }));
    checkHours(`rings at ${latDeg}`, open, cases, MANY_MINUTES);
  },
  180_000,
);

function checkHours(
  label: string,
  open: number,
  cases: { scene: LightScene; hours: number }[],
  steps: QuadratureSteps,
): void {
  const fine = cases.map(({ scene, hours }) => hoursAtCentre(scene, steps) - hours);
  const usual = cases.map(({ scene, hours }) => hoursAtCentre(scene) - hours);
  const text = (errors: number[]) => errors.map((e) => e.toFixed(1)).join(', ');
  console.log(`${label}: fine ${text(fine)} h; usual ${text(usual)} h`);
  for (const error of fine) expect(Math.abs(error)).toBeLessThan(2);
  // The usual directions keep within the 1 % of open hours that is promised for 99 of 100 cells: a straight edge that
  // runs along the sun's course of a single day is as bad as it gets.
  for (const error of usual) expect(Math.abs(error)).toBeLessThan(0.01 * open);
}
