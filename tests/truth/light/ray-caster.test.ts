/**
 * Direct hours under opaque crowns on rolling land, against a ray caster of a general-purpose library (three-mesh-bvh
 * on meshes of three): a ray to the sun every ten minutes of the year from cells drawn by lot, the sun from
 * tests/reference/. Promised: 1 % of open hours. Beside the usual directions stands a finer year, whose sun is so dense
 * that what is left is no choice of directions: it holds the shadows themselves.
 */
import { expect, test } from 'vitest';
import { CROWN_FORMS } from '../../../src/crowns/crown-set.ts';
import { computeLight } from '../../../src/light/compute-light.ts';
import { type Fineness, USUAL } from '../../../src/light/light-plan.ts';
import { cellCentreX, cellCentreY, cellCount, sampleGrid } from '../../../src/numeric/grid.ts';
import { seededRandom } from '../../../src/numeric/random.ts';
import { runToEnd } from '../../../src/numeric/steps.ts';
import { yearOf } from '../../light/plain-scene.ts';
import {
  crownMesh,
  crownVolumeM3,
  meshCaster,
  meshVolumeM3,
  opaqueCrowns,
} from '../../reference/mesh-caster.ts';
import { plainYear } from '../../reference/reference-sun.ts';
import { seededScene } from '../../reference/seeded-scene.ts';

const SEEDS = [1, 2, 7];
const CELLS_A_SCENE = 16;
/** Read well above the land, whose triangles lie up to a few centimetres off the surface between four elevations. */
const READING_M = 0.5;
/** A sun every degree of its course; direct hours ask for no sky. */
const FINE: Fineness = { sun: { declinationLevels: 122, minutes: 5 }, skyDirections: 1 };
const errors: Record<'usual' | 'fine', number[]> = { usual: [], fine: [] };

test.each(CROWN_FORMS)('the mesh of a %s has its volume, to a millionth', (form) => {
  expect(Math.abs(meshVolumeM3(crownMesh(form, 3.1, 8.4)) / crownVolumeM3(form, 3.1, 8.4) - 1)).toBeLessThan(
    1e-6,
  );
});

test.each(SEEDS)(
  'scene %d: the engine counts the hours that a general ray caster counts',
  (seed) => {
    const { scene: drawn, grid } = seededScene(seed);
    const scene = opaqueCrowns(drawn);
    const usual = runToEnd(computeLight({ scene, grid, readingHeightM: READING_M }, USUAL));
    const fine = runToEnd(computeLight({ scene, grid, readingHeightM: READING_M }, FINE));
    const caster = meshCaster(scene);
    const { moments } = plainYear(scene);
    const random = seededRandom(seed);
    let shaded = 0;
    for (let k = 0; k < CELLS_A_SCENE; k++) {
      const cell = Math.floor(random() * cellCount(grid));
      const x = cellCentreX(grid, cell % grid.columns);
      const y = cellCentreY(grid, Math.floor(cell / grid.columns));
      const z = sampleGrid(scene.ground, x, y) + READING_M;
      let hours = 0;
      for (const { altitudeRad, azimuthRad, hours: step } of moments) {
        const a = azimuthRad - scene.convergenceRad;
        const flat = Math.cos(altitudeRad);
        if (!caster.blocked(x, y, z, Math.sin(a) * flat, Math.cos(a) * flat, Math.sin(altitudeRad)))
          hours += step;
      }
      const open = yearOf(fine.openHours, cell);
      shaded += 1 - hours / open;
      errors.usual.push(Math.abs(yearOf(usual.directHours, cell) - hours) / open);
      errors.fine.push(Math.abs(yearOf(fine.directHours, cell) - hours) / open);
    }
    // The crowns are in the way for much of the year: that is what is checked.
    expect(shaded / CELLS_A_SCENE).toBeGreaterThan(0.1);
  },
  60_000,
);

test.each([
  ['usual', 0.005, 0.01],
  ['fine', 0.0015, 0.005],
] as const)('over all cells, %s directions: mean within %f, worst within %f', (fineness, meanMost, most) => {
  const list = errors[fineness];
  const mean = list.reduce((a, b) => a + b) / list.length;
  const worst = Math.max(...list);
  console.log(
    `ray caster, ${list.length} cells, ${fineness} directions: mean ${(100 * mean).toFixed(2)} %, worst ${(100 * worst).toFixed(2)} % of open hours`,
  );
  expect(list).toHaveLength(SEEDS.length * CELLS_A_SCENE);
  expect(mean).toBeLessThan(meanMost);
  expect(worst).toBeLessThan(most);
});
