import { describe, expect, test } from 'vitest';
import { compileKernel, KERNELS } from '../../.tools/kernel.ts';
import { CROWN_FORMS, CROWN_GROUND, CROWN_STRIDE } from '../../src/crowns/crown-set.ts';
import { PRISM_STRIDE } from '../../src/crowns/prism-set.ts';
import { EDGE, PLANE_BYTES } from '../../src/light/kernel/assembly/layout.ts';
import { loadTile } from '../../src/light/kernel/load.ts';
import { KERNEL_BASE64 } from '../../src/light/kernel/wasm-bytes.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import { ALL_ROWS, shadowTile } from '../../src/light/shadow-tile.ts';
import { type Grid, type GridSpec, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { degToRad } from '../../src/units/angle.ts';
import { seededScene } from '../reference/seeded-scene.ts';
import { type Aim, castOver, depthOfAll, loadedWith, throughCrown, throughPrism } from './kernel-paths.ts';
import { plainScene } from './plain-scene.ts';

test('the kernel that is run is the one whose source is here', async () => {
  const fromSource = Buffer.from(await compileKernel(KERNELS.light)).toString('base64');
  expect(KERNEL_BASE64 === fromSource, 'run `npm run kernel`').toBe(true);
});

test('what a depth takes is 1 - exp(-depth) within 3e-6, nothing at 0 and never more than all', () => {
  const scene = plainScene({ crowns: [{ x: 0, y: 0, base: 1, top: 2, radius: 1, depthOn: 0.1 }] });
  const loaded = loadedWith(scene, [{ altitudeRad: 1, azimuthRad: 1 }], [1, 1]);
  const { kernel, rays, z0 } = loaded;
  const grid = { columns: EDGE, rows: EDGE, cellM: 1, westM: 0, northM: 0 };
  const at = loadTile(kernel, shadowTile(grid, ALL_ROWS, 0, 0, scene.ground, 0), 1, z0);
  const [paths, out] = [kernel.take(PLANE_BYTES), kernel.take(PLANE_BYTES)];
  let worst = 0;
  for (const most of [1e-4, 0.01, 1, 20, 200, 5000]) {
    const depths = Float32Array.from({ length: EDGE * EDGE }, (_, k) => (most * k) / (EDGE * EDGE - 1));
    kernel.floats.set(depths, paths / 4);
    kernel.layPath(at.address, rays[0].address, paths, 1, 1, 0, 2, 0);
    kernel.lossesOf(at.address, 0, out);
    kernel.wipe(at.address, rays[0].address);
    const losses = kernel.floats.slice(out / 4, out / 4 + EDGE * EDGE);
    expect(losses[0]).toBe(0);
    depths.forEach((depth, k) => {
      worst = Math.max(worst, Math.abs(losses[k] + Math.expm1(-depth)));
    });
    expect(Math.max(...losses)).toBeLessThanOrEqual(1);
  }
  console.log(`1 - exp(-depth): worst ${worst.toExponential(2)}`);
  expect(worst).toBeLessThan(3e-6);
});

/** A depth from which the path is had back to a tenth of a millimetre. */
const DEPTH_PER_M = 0.05;
const AIMS = 60;
const COLUMNS = 50;
const ROWS = 40;

type Between = (low: number, high: number) => number;
/** With its rise to east and north. */
type Slope = Grid & { readonly east: number; readonly north: number };

/** A slope through (0, 0) at 80 m, kilometres of it. */
function slopingGround(between: Between): Slope {
  const [east, north] = [between(-0.25, 0.25), between(-0.25, 0.25)];
  const values = Float32Array.of(-1, 1, -1, 1).map(
    (x, k) => 80 + 1000 * (east * x + north * (k < 2 ? 1 : -1)),
  );
  return { columns: 2, rows: 2, cellM: 2000, westM: -2000, northM: 2000, values, east, north };
}

/** Half of them low; above the slope, which would hide the sun otherwise. */
function aimsOf(between: Between, ground: Slope): Aim[] {
  const aims: Aim[] = [];
  while (aims.length < AIMS) {
    const altitudeRad = degToRad(aims.length % 2 === 0 ? between(1.5, 12) : between(5, 89));
    const azimuthRad = between(0, 2 * Math.PI);
    const rise = ground.east * Math.sin(azimuthRad) + ground.north * Math.cos(azimuthRad);
    if (Math.tan(altitudeRad) > rise) aims.push({ altitudeRad, azimuthRad });
  }
  return aims;
}

/** Cells about a place somewhere in the shadow of what stands at (0, 0): often under it, often far off. */
function cellsInShadow(between: Between, aim: Aim, topM: number): GridSpec {
  const away = Math.max(0, between(-0.3, 1)) * Math.min(800, topM / Math.tan(aim.altitudeRad));
  const cellM = [0.25, 0.5, 1][Math.floor(between(0, 3))];
  return {
    columns: COLUMNS,
    rows: ROWS,
    cellM,
    westM: -away * Math.sin(aim.azimuthRad) - (COLUMNS / 2) * cellM + between(-3, 3),
    northM: -away * Math.cos(aim.azimuthRad) + (ROWS / 2) * cellM + between(-3, 3),
  };
}

/** How far aside a float's last digits may move a ray, m. */
const ASIDE_M = 1e-3;
/**
 * What may be left then, m: from 4 degrees up, and below, where the kernel counts from the middle of the shadow on level
 * ground, a hundred metres and more back, although on a slope that faces the sun the crown stands close by.
 */
const LEFT_M = 5e-4;
const LEFT_LOW_M = 1e-2;
const LOW_RAD = degToRad(4);

/**
 * Holds the kernel's paths through the one thing of a scene against exact ones. Where a ray grazes, its path grows as
 * the square root of how far within it passes, so that a hair's breadth of place is a hand's breadth of path: the
 * kernel's path has to lie among the exact ones of rays no more than ASIDE_M away.
 */
function expectPaths(
  label: string,
  between: Between,
  scenes: readonly LightScene[],
  topM: number,
  exact: (scene: LightScene, o: readonly [number, number, number], aim: Aim) => number,
): void {
  const errors: number[] = [];
  let crossed = 0;
  const beyond = { low: 0, high: 0 };
  for (const scene of scenes) {
    const aims = aimsOf(between, scene.ground as Slope);
    const loaded = loadedWith(scene, aims, [1, 1]);
    aims.forEach((aim, k) => {
      // At the height of the crown too, so that rays start within it.
      const readingM = [0.1, 0.8, 3, 6][k % 4];
      for (const { o, losses } of castOver(loaded, k, cellsInShadow(between, aim, topM), readingM)) {
        const path = exact(scene, o, aim);
        const kernels = -Math.log1p(-losses[0]) / DEPTH_PER_M;
        if (path > 0) crossed++;
        else if (kernels === 0) continue;
        errors.push(Math.abs(kernels - path));
        const [x, y, z] = o;
        const near = [-ASIDE_M, ASIDE_M].flatMap((d) => [
          exact(scene, [x + d, y, z], aim),
          exact(scene, [x, y + d, z], aim),
          exact(scene, [x, y, z + d], aim),
        ]);
        const left = Math.max(kernels - Math.max(path, ...near), Math.min(path, ...near) - kernels);
        const which = aim.altitudeRad < LOW_RAD ? 'low' : 'high';
        beyond[which] = Math.max(beyond[which], left);
      }
    });
  }
  errors.sort((a, b) => a - b);
  const at = (share: number) => errors[Math.ceil(share * errors.length) - 1].toExponential(1);
  console.log(
    `${label}: ${crossed} rays through it, path off by ${at(0.5)} m at the median, ${at(0.999)} at 99.9 %, ${at(1)} at most; beyond those of rays ${ASIDE_M} m aside by ${beyond.high.toExponential(1)} m at most, ${beyond.low.toExponential(1)} m below 4 degrees`,
  );
  expect(crossed).toBeGreaterThan(10_000);
  expect(beyond.high).toBeLessThan(LEFT_M);
  expect(beyond.low).toBeLessThan(LEFT_LOW_M);
}

describe('paths on slopes, near and far, from beside, under and within', () => {
  test.each(CROWN_FORMS)('through a %s are those of the closed form', (form) => {
    const random = seededRandom(101 + CROWN_FORMS.indexOf(form));
    const between = (low: number, high: number) => low + random() * (high - low);
    const scenes = Array.from({ length: 4 }, () => {
      const ground = slopingGround(between);
      const top = between(6, 14);
      const crown = { x: between(-1, 1), y: between(-1, 1), base: between(0, 0.5) * top, top };
      const scene = plainScene({
        ground,
        crowns: [
          { ...crown, radius: between(1.5, 6), depthOn: DEPTH_PER_M, form: CROWN_FORMS.indexOf(form) },
        ],
      });
      scene.crowns.values[CROWN_GROUND] = sampleGrid(ground, crown.x, crown.y);
      return scene;
    });
    expectPaths(form, between, scenes, 10, (scene, o, aim) => throughCrown(scene, 0, o, aim));
  });

  test('through a convex prism on its own plane of ground are those of cutting it face by face', () => {
    const random = seededRandom(7);
    const between = (low: number, high: number) => low + random() * (high - low);
    const scenes = Array.from({ length: 6 }, (_, k) => {
      const ground = slopingGround(between);
      const corners = 3 + k;
      const [wide, deep] = [between(2, 9), between(1, 5)];
      const ring = Array.from({ length: corners }, (_, c) => {
        const turn = (2 * Math.PI * (c + between(0, 0.8))) / corners;
        return [wide * Math.cos(turn), deep * Math.sin(turn)];
      }).flat();
      const scene = plainScene({
        ground,
        pieces: [{ ring, base: between(0, 1), top: between(4, 12), depthOn: DEPTH_PER_M }],
      });
      scene.prisms.values.set([80, ground.east, ground.north], 0);
      return scene;
    });
    expectPaths('prism', between, scenes, 8, (scene, o, aim) => throughPrism(scene, 0, o, aim));
  });
});

test('a solid prism takes everything where it is met and nothing beside it', () => {
  const random = seededRandom(9);
  const between = (low: number, high: number) => low + random() * (high - low);
  const ground = slopingGround(between);
  const scene = plainScene({ ground, pieces: [{ ring: [-4, -2, 5, -3, 4, 3, -3, 2], base: -2, top: 5 }] });
  scene.prisms.values.set([80, ground.east, ground.north], 0);
  expect(scene.prisms.values).toHaveLength(PRISM_STRIDE);
  const aims = aimsOf(between, ground);
  const loaded = loadedWith(scene, aims, [1, 1]);
  let met = 0;
  aims.forEach((aim, k) => {
    for (const { o, losses } of castOver(loaded, k, cellsInShadow(between, aim, 5), 0.1)) {
      const path = throughPrism(scene, 0, o, aim);
      // A hair's breadth of a corner may fall to either side.
      if (path > 0 && path < 0.002) continue;
      if (path > 0) met++;
      expect(losses[0]).toBe(path > 0 ? 1 : 0);
    }
  });
  expect(met).toBeGreaterThan(5000);
});

test.each([1, 2, 3, 4])(
  'scene %d: depths of all that stands there add up, in each state of the leaves',
  (seed) => {
    const { scene, grid, readingHeightM } = seededScene(seed);
    expect(scene.crowns.values).toHaveLength(CROWN_STRIDE * scene.crowns.count);
    const random = seededRandom(seed);
    const aims = Array.from({ length: 20 }, () => ({
      altitudeRad: degToRad(3 + 85 * random()),
      azimuthRad: 2 * Math.PI * random(),
    }));
    const states = [
      [1, 1, 1],
      [1, 0, 0.3],
    ];
    const loaded = loadedWith(scene, aims, states.flat());
    let worst = 0;
    aims.forEach((aim, k) => {
      for (const { o, losses } of castOver(loaded, k, grid, readingHeightM))
        states.forEach((leafShare, state) => {
          const { depth, solidM } = depthOfAll(scene, o, aim, leafShare);
          if (solidM > 0 && solidM < 0.002) return;
          const taken = solidM > 0 ? 1 : -Math.expm1(-depth);
          worst = Math.max(worst, Math.abs(losses[state] - taken));
        });
    });
    console.log(`scene ${seed}: worst of what is taken ${worst.toExponential(1)}`);
    expect(worst).toBeLessThan(0.003);
  },
);
