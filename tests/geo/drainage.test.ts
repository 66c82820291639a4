import { describe, expect, test } from 'vitest';
import { drainage, wetnessIndex } from '../../src/geo/drainage.ts';
import { slopeAndAspect } from '../../src/geo/terrain.ts';
import type { Grid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';

const ground = (rows: readonly (readonly number[])[], cellM = 10): Grid => ({
  columns: rows[0].length,
  rows: rows.length,
  cellM,
  westM: 0,
  northM: 0,
  values: Float32Array.from(rows.flat()),
});

function randomGround(seed: number): Grid {
  const random = seededRandom(seed);
  const [columns, rows] = [4 + Math.floor(12 * random()), 4 + Math.floor(12 * random())];
  return ground(
    Array.from({ length: rows }, () =>
      Array.from({ length: columns }, () => (random() < 0.06 ? Number.NaN : Math.floor(12 * random()))),
    ),
  );
}

/** Plain fill: every cell is lowered to the highest of itself and its lowest neighbour until nothing moves. */
function plainFill({ columns, rows, values }: Grid): number[] {
  const level = Array.from(values, (z) => (Number.isNaN(z) ? Number.NaN : Number.POSITIVE_INFINITY));
  for (let moved = true; moved; ) {
    moved = false;
    for (let cell = 0; cell < level.length; cell++) {
      if (Number.isNaN(values[cell])) continue;
      let lowest = Number.POSITIVE_INFINITY;
      for (let dr = -1; dr <= 1; dr++)
        for (let dc = -1; dc <= 1; dc++) {
          const [c, r] = [(cell % columns) + dc, Math.floor(cell / columns) + dr];
          const out = c < 0 || r < 0 || c >= columns || r >= rows;
          const next = out ? Number.NaN : level[r * columns + c];
          lowest = Math.min(lowest, Number.isNaN(next) ? Number.NEGATIVE_INFINITY : next);
        }
      const wanted = Math.max(values[cell], lowest);
      if (wanted < level[cell]) {
        level[cell] = wanted;
        moved = true;
      }
    }
  }
  return level;
}

describe('filling hollows', () => {
  test('a bowl fills to its lip, and a notch in the lip lets it out', () => {
    const bowl = [
      [5, 5, 5, 5, 5],
      [5, 3, 2, 3, 5],
      [5, 2, 1, 2, 5],
      [5, 3, 2, 3, 5],
      [5, 5, 5, 5, 5],
    ];
    const { filledM } = drainage(ground(bowl));
    expect([...filledM].every((level) => level === 5)).toBe(true);
    bowl[2][4] = 2.5;
    const notched = drainage(ground(bowl)).filledM;
    expect(notched[2 * 5 + 2]).toBe(2.5);
    expect(notched[1 * 5 + 1]).toBe(3);
  });

  test('is what a plain fill finds on random ground with holes in it', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomGround(seed);
      expect([...drainage(random).filledM], `seed ${seed}`).toEqual(plainFill(random));
    }
  });
});

describe('what runs where', () => {
  test('everything runs out, never up, and the outlets together carry the whole ground', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomGround(seed);
      const { filledM, runsTo, upslopeM2 } = drainage(random);
      const known = [...random.values.keys()].filter((cell) => !Number.isNaN(random.values[cell]));
      let outM2 = 0;
      for (const cell of known) {
        if (runsTo[cell] === -1) outM2 += upslopeM2[cell];
        let steps = 0;
        for (let at = cell; runsTo[at] !== -1; at = runsTo[at]) {
          expect(filledM[runsTo[at]]).toBeLessThanOrEqual(filledM[at]);
          expect(++steps).toBeLessThanOrEqual(known.length);
        }
      }
      expect(outM2, `seed ${seed}`).toBeCloseTo(known.length * 100, 6);
    }
  });

  test('down a plane each cell carries all above it, and wetness is ln(a / tan b)', () => {
    // Falls 1 in 10 to the south.
    const plane = ground(Array.from({ length: 8 }, (_, r) => Array.from({ length: 7 }, () => 100 - r)));
    const drained = drainage(plane);
    const cell = 5 * 7 + 3;
    expect(drained.upslopeM2[cell]).toBe(5 * 100);
    const { slopeDeg } = slopeAndAspect(plane, 0);
    const wetness = wetnessIndex(plane, drained, slopeDeg);
    expect(wetness[cell]).toBeCloseTo(Math.log(500 / 10 / 0.1), 4);
  });
});
