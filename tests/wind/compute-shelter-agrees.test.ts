import { describe, expect, it } from 'vitest';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { reliefOf } from '../../src/wind/relief.ts';
import { referenceShelter } from '../reference/shelter-reference.ts';
import {
  ALL_GUESSES,
  crownSet,
  NO_GUESSES,
  request,
  sector,
  seededBarriers,
  seededTrees,
} from './shelter-scenes.ts';

const grid = { columns: 30, rows: 29, cellM: 8.07, westM: -120, northM: 119 };
const growing = Array.from({ length: 8 }, (_, i) =>
  sector(i * 45, (1 + (i % 3)) / 16, 3 + (i % 4), 1.7 + (i % 2) * 0.5),
);
const rest = [sector(225, 0.4, 6, 2), sector(300, 0.3, 4, 1.8), sector(33, 0.2, 7, 2.2)];

/** A ridge and a hollow in one, over more than the scene. */
const relief = reliefOf({
  columns: 60,
  rows: 60,
  cellM: 10,
  westM: -300,
  northM: 300,
  values: Float32Array.from({ length: 3600 }, (_, i) => {
    const [x, y] = [(i % 60) * 10 - 295, 295 - Math.floor(i / 60) * 10];
    return 12 / (1 + ((x - y) / 90) ** 2) - 8 * Math.exp(-((x + 60) ** 2 + (y - 70) ** 2) / 4000);
  }),
});
const WITHOUT = ['parallelWind', 'raisedFeet', 'insideWoods', 'scatteredTrees', 'landform'] as const;

describe('the shelter engine agrees with the plain reference', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])('on seeded scene %i', (seed) => {
    const scene = request(seededBarriers(seed), {
      grid,
      growing,
      rest,
      convergenceRad: 0.03,
      crowns: seed % 3 === 0 ? undefined : crownSet(seededTrees(seed)),
      relief: seed % 2 === 0 ? relief : null,
      options:
        seed === 8
          ? NO_GUESSES
          : { ...ALL_GUESSES, chainedBelts: seed > 9, [WITHOUT[seed % WITHOUT.length]]: seed < 6 },
    });
    const fast = runToEnd(computeShelter(scene));
    const slow = referenceShelter(scene);
    const cells = grid.columns * grid.rows;
    let compared = 0;
    let mostGaleHours = 0;
    const all: number[] = [];
    for (let i = 0; i < 3 * cells; i++) {
      if (Number.isNaN(fast.windShare[i])) continue;
      compared++;
      all.push(Math.abs(fast.windShare[i] - slow.windShare[i]));
      mostGaleHours = Math.max(mostGaleHours, Math.abs(fast.galeHours[i] - slow.galeHours[i]));
    }
    expect(Math.max(...all)).toBeLessThan(0.001);
    expect(mostGaleHours).toBeLessThan(0.5);
    expect(compared).toBeGreaterThan(2 * cells);
    const sorted = [...all].sort((a, b) => a - b);
    console.log(
      `seed ${seed}: share differs by p50 ${sorted[sorted.length >> 1].toExponential(1)}, p99 ${sorted[Math.floor(sorted.length * 0.99)].toExponential(1)}, most ${sorted[sorted.length - 1].toExponential(1)}; least share ${Math.min(...fast.windShare.filter((v) => !Number.isNaN(v))).toFixed(3)}`,
    );
  });
});
