import { expect, test } from 'vitest';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { QUICK_FINENESS } from '../../src/wind/fineness.ts';
import { type Followed, followShelter, type ShelterField } from '../../src/wind/shelter-field.ts';
import type { ShelterRequest } from '../../src/wind/shelter-types.ts';
import { crownSet, request, sector, seededBarriers, seededTrees } from './shelter-scenes.ts';

const grid = { columns: 40, rows: 36, cellM: 6, westM: -120, northM: 108 };
const rose = Array.from({ length: 16 }, (_, i) => sector(i * 22.5, 1 / 16, 3 + (i % 4)));
const EDITS = 24;

/** Most that scattered trees, which stay as they were found, make of a share of open wind. */
const MOST_OF_TREES = 0.003;

test.each([
  [1, 0],
  [2, 0],
  [3, 0],
  [3, 60],
])('belts that are moved and raised in the hand: as from scratch, seed %i with %i trees', (seed, trees) => {
  const random = seededRandom(seed);
  let scene: ShelterRequest = request(seededBarriers(seed), {
    grid,
    growing: rose,
    rest: rose,
    crowns: crownSet(seededTrees(seed, trees)),
  });
  let field: ShelterField | null = null;
  let kept = 0;
  let worst = 0;
  for (let edit = 0; edit < EDITS; edit++) {
    // A few steps with the same thing, then another.
    const held = Math.floor(edit / 8) % scene.scene.barriers.length;
    const barriers = scene.scene.barriers.map((barrier, index) => {
      if (index !== held) return barrier;
      const xyM = barrier.xyM.slice();
      const vertex = Math.floor((random() * xyM.length) / 2);
      xyM[2 * vertex] += 4 * random() - 2;
      xyM[2 * vertex + 1] += 4 * random() - 2;
      const heightM = barrier.heightM.map((height) => height * (0.95 + 0.1 * random()));
      return { ...barrier, xyM, heightM };
    });
    scene = { ...scene, scene: { ...scene.scene, barriers }, fineness: QUICK_FINENESS };
    const step: Followed = runToEnd(followShelter(field, { ...scene, held: [held] }));
    if (field && step.field === field) kept++;
    field = step.field;
    const scratch = runToEnd(computeShelter(scene));
    expect(step.result.directions).toBe(scratch.directions);
    if (trees === 0) {
      expect(step.result.windShare).toEqual(scratch.windShare);
      expect(step.result.galeHours).toEqual(scratch.galeHours);
    } else {
      for (const [i, share] of scratch.windShare.entries())
        if (!Number.isNaN(share)) worst = Math.max(worst, Math.abs(share - step.result.windShare[i]));
      expect(worst).toBeLessThan(MOST_OF_TREES);
    }
  }
  console.log(`seed ${seed}: ${kept} of ${EDITS} steps with what was kept; trees: ${worst.toExponential(1)}`);
  expect(kept).toBeGreaterThan(EDITS / 2);
});

test('with the chained rule nothing is kept, and the answer is the same', () => {
  const scene = request(seededBarriers(5), { grid, growing: rose, rest: rose });
  const chained = { ...scene, options: { ...scene.options, chainedBelts: true } };
  const { field, result } = runToEnd(followShelter(null, { ...chained, held: [0] }));
  expect(field).toBeNull();
  expect(result.windShare).toEqual(runToEnd(computeShelter(chained)).windShare);
});
