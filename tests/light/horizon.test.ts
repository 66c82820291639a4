import { expect, test } from 'vitest';
import { groundPyramid, horizonTangent } from '../../src/light/horizon.ts';
import type { Grid } from '../../src/numeric/grid.ts';

function land(edge: number, cellM: number, height: (x: number, y: number) => number): Grid {
  const half = (edge * cellM) / 2;
  const values = new Float32Array(edge * edge);
  for (let r = 0; r < edge; r++)
    for (let c = 0; c < edge; c++)
      values[r * edge + c] = height((c + 0.5) * cellM - half, half - (r + 0.5) * cellM);
  return { columns: edge, rows: edge, cellM, westM: -half, northM: half, values };
}

test('flat land has no horizon above the level', () => {
  const pyramid = groundPyramid(land(50, 10, () => 7));
  for (let a = 0; a < 8; a++) expect(horizonTangent(pyramid, 0, 0, 7.1, Math.sin(a), Math.cos(a))).toBe(0);
});

test.each([10, 1000])('a plane of cells of %d m stands up by its own slope in each direction', (cellM) => {
  const pyramid = groundPyramid(land(41, cellM, (x, y) => 0.2 * x - 0.1 * y));
  for (let a = 0; a < 2 * Math.PI; a += 0.3) {
    const slope = 0.2 * Math.sin(a) - 0.1 * Math.cos(a);
    const found = horizonTangent(pyramid, 3, 4, 0.6 - 0.4 + 0.1, Math.sin(a), Math.cos(a));
    expect(Math.abs(found - Math.max(0, slope))).toBeLessThan(0.002);
  }
});

test('a ridge near and a range far away both show at their angle', () => {
  // A ridge 20 m high whose crest runs north to south 100 m east (over a row of cell centres), and a 900 m range 9 km west.
  const near = groundPyramid(land(401, 2, (x) => Math.max(0, 20 - Math.abs(x - 100) / 2)));
  expect(Math.abs(horizonTangent(near, 0, 0, 0, 1, 0) - 0.2)).toBeLessThan(0.002);
  const far = groundPyramid(land(701, 30, (x) => Math.max(0, 900 - Math.abs(x + 9000) / 3)));
  expect(Math.abs(horizonTangent(far, 0, 0, 0, -1, 0) - 0.1)).toBeLessThan(0.001);
  expect(horizonTangent(far, 0, 0, 0, 1, 0)).toBe(0);
});

test('holes in the ground hide nothing', () => {
  const ground = land(61, 10, (x) => (x > 50 ? 40 : 0));
  for (let i = 0; i < ground.values.length; i++) if (ground.values[i] === 40) ground.values[i] = Number.NaN;
  expect(horizonTangent(groundPyramid(ground), 0, 0, 0.1, 1, 0)).toBe(0);
});
