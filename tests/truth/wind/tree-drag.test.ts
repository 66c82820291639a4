import { describe, expect, it } from 'vitest';
import {
  canopyRoughness,
  DRAG_NODES,
  dragTable,
  frictionShareAmongTrees,
  MOST_ROUGHNESS_DENSITY,
} from '../../../src/wind/tree-drag.ts';

describe('drag of scattered trees (Raupach 1992, 1994)', () => {
  it.each([
    // Computed apart from C_S 0.003, C_R 0.3, c_d1 7.5, psi_h 0.193, u*/U_h at most 0.3, kappa 0.4.
    [0.02, 0.2299, 0.01378],
    [0.1, 0.4235, 0.07733],
    [0.3, 0.5848, 0.13278],
  ])(
    'at a roughness density of %f the displacement height is %f h and the roughness length %f h',
    (lambda, d, z0) => {
      const { displacement, roughness } = canopyRoughness(lambda);
      expect(displacement).toBeCloseTo(d, 3);
      expect(roughness).toBeCloseTo(z0, 3);
    },
  );

  it('orchards come out as rough as the published class says: 0.5 m (Davenport-Wieringa "very rough: orchards, clumps")', () => {
    // Trees of 5 m, 8 m apart, showing 10 m2 each less a fifth of daylight: some 0.13 of frontal area.
    const roughnessM = 5 * canopyRoughness((0.8 * 10) / 64).roughness;
    console.log(`orchard of 5 m: z0 ${roughnessM.toFixed(2)} m, published class 0.5 m`);
    expect(roughnessM).toBeGreaterThan(0.25);
    expect(roughnessM).toBeLessThan(1);
  });

  it('closed forest has its displacement near two thirds and its roughness near a tenth of its height (common practice)', () => {
    const { displacement, roughness } = canopyRoughness(1);
    expect(Math.abs(displacement - 0.7)).toBeLessThan(0.1);
    expect(Math.abs(roughness - 0.1)).toBeLessThan(0.03);
  });

  it('parts the drag as 1 / (1 + beta lambda), beta = 100, before the rougher ground draws more down', () => {
    for (const lambda of [0.01, 0.05, 0.2]) {
      const { displacement, roughness } = canopyRoughness(lambda);
      const drawn = Math.log(10 / canopyRoughness(0).roughness) / Math.log((10 - displacement) / roughness);
      expect((frictionShareAmongTrees(lambda) / drawn) ** 2).toBeCloseTo(1 / (1 + 100 * lambda), 9);
    }
  });

  it('falls with every tree from exactly open to its bound, and no further', () => {
    expect(frictionShareAmongTrees(0)).toBe(1);
    let last = 1;
    for (let lambda = 0.001; lambda <= MOST_ROUGHNESS_DENSITY; lambda += 0.001) {
      const share = frictionShareAmongTrees(lambda);
      expect(share).toBeLessThan(last);
      last = share;
    }
    expect(frictionShareAmongTrees(3)).toBe(frictionShareAmongTrees(MOST_ROUGHNESS_DENSITY));
    expect(last).toBeGreaterThan(0.25);
    expect(last).toBeLessThan(0.35);
  });

  it('agrees in size with what was simulated in a measured agroforestry: 17 to 67 % less wind (van Ramshorst and others 2022, for strips of trees)', () => {
    // From a tree here and there to an orchard.
    for (const lambda of [0.02, 0.05, 0.1, 0.2]) {
      expect(1 - frictionShareAmongTrees(lambda)).toBeGreaterThan(0.17);
      expect(1 - frictionShareAmongTrees(lambda)).toBeLessThan(0.67);
    }
  });

  it('is the same from its table to 1e-6', () => {
    const table = dragTable();
    for (let lambda = 0.001; lambda < 0.6; lambda += 0.0037) {
      const at = Math.sqrt(Math.min(1, lambda / MOST_ROUGHNESS_DENSITY)) * DRAG_NODES;
      const node = Math.floor(at);
      const read = table[node] + (at - node) * (table[node + 1] - table[node]);
      expect(Math.abs(read - (1 - frictionShareAmongTrees(lambda)))).toBeLessThan(1e-6);
    }
  });
});
