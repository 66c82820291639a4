import { describe, expect, it } from 'vitest';
import { runToEnd } from '../../src/numeric/steps.ts';
import { shelterScene } from '../../src/scene/build-scene.ts';
import { withThingsNear } from '../../src/scene/things-near.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { QUICK_FINENESS } from '../../src/wind/fineness.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { twentyFields } from '../bench/twenty-fields.ts';

const { document, options } = twentyFields();
const { scene } = shelterScene(document, { ...options, year: 20 });
const grid = { columns: 40, rows: 40, cellM: 8, westM: -160, northM: 160 };
const cutOf = (of: typeof scene, scatteredTrees: boolean) =>
  runToEnd(
    computeShelter({
      scene: of,
      grid,
      readingHeightM: 1.5,
      galeMps: 10.8,
      options: { ...USUAL_SHELTER_OPTIONS, scatteredTrees },
      fineness: QUICK_FINENESS,
    }),
  ).windShare;

describe('a scene with what can reach a grid alone', () => {
  const near = withThingsNear(scene, grid);
  it('leaves far things out', () => {
    expect(near.barriers.length).toBeLessThan(scene.barriers.length);
    expect(near.crowns.count).toBeLessThan(scene.crowns.count);
    expect(near.crowns.count).toBeGreaterThan(0);
  });

  it('has the same wind behind its belts to the last bit', () => {
    expect(cutOf(near, false)).toEqual(cutOf(scene, false));
  });

  it('has the same wind among its trees within what the grid they are laid on does', () => {
    const [one, other] = [cutOf(near, true), cutOf(scene, true)];
    const off = one.map((share, cell) => Math.abs(share - other[cell]));
    expect(off.reduce((sum, each) => sum + each, 0) / off.length).toBeLessThan(0.003);
  });
});
