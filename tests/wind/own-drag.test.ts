import { expect, test } from 'vitest';
import { toLocal } from '../../src/geo/frame.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { shelterScene } from '../../src/scene/build-scene.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { ownDrag } from '../../src/wind/own-drag.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { at, northWind, optionsOf, tree } from '../years/years-site.ts';

const reading = { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS };

test('what a tree takes off at its own place is what the map shows there when it stands alone', () => {
  const place = [3, -7] as const;
  const document = northWind([tree('t', place)]);
  const options = optionsOf(document);
  const [x, y] = toLocal(options.frame, at(...place));
  const grid = { columns: 1, rows: 1, cellM: 0.01, westM: x - 0.005, northM: y + 0.005 };
  for (const year of [0, 1, 2, 3, 5, 10, 20, 40]) {
    const { scene } = shelterScene(document, { ...options, year });
    const map = runToEnd(computeShelter({ ...reading, scene, grid })).windShare[0];
    expect(ownDrag({ ...reading, scene })[0], `year ${year}`).toBeCloseTo(1 - map, 3);
  }
});

test('of several trees each has its own, whatever stands beside it; none where trees do not count', () => {
  const trees = [tree('a', [0, 0]), tree('b', [4, 0], { plantedYear: 2020 }), tree('c', [8, 0])];
  const document = northWind(trees);
  const { scene } = shelterScene(document, { ...optionsOf(document), year: 5 });
  const [a, b, c] = ownDrag({ ...reading, scene });
  expect(a).toBeCloseTo(c, 12);
  expect(b).toBeGreaterThan(a);
  const options = { ...USUAL_SHELTER_OPTIONS, scatteredTrees: false };
  expect([...ownDrag({ ...reading, scene, options })]).toEqual([0, 0, 0]);
});
