import { describe, expect, test } from 'vitest';
import { besideEdge } from '../../src/choose/edge-cells.ts';
import { binWidthM, edgeBins, edgeYear, sidesOf } from '../../src/choose/edge-profile.ts';
import type { EdgeBin, EdgeNeeds } from '../../src/choose/edge-types.ts';

const grid = { columns: 40, rows: 40, cellM: 1, westM: 0, northM: 40 };
const all = new Uint8Array(1600).fill(1);
const needs: EdgeNeeds = { sunLight: 0.68, shadeLight: 0.3, windCut: 0.3 };
const cellOf = (x: number, y: number) => Math.floor(40 - y) * 40 + Math.floor(x);

describe('ground beside a strip', () => {
  // From (10, 20) to (30, 20), 4 m wide.
  const strip = {
    line: [
      [10, 20],
      [30, 20],
    ] as [number, number][],
    closed: false,
    halfWidthM: 2,
  };
  const beside = besideEdge(grid, all, strip);

  test('is measured from its near side, on either side apart', () => {
    expect(beside.distanceM[cellOf(20.5, 30.5)]).toBeCloseTo(8.5, 5);
    expect(beside.distanceM[cellOf(20.5, 10.5)]).toBeCloseTo(7.5, 5);
    expect(beside.side[cellOf(20.5, 30.5)]).not.toBe(beside.side[cellOf(20.5, 10.5)]);
  });

  test('ends where the strip ends, and begins where it is over', () => {
    expect(beside.distanceM[cellOf(5.5, 25.5)]).toBeNaN();
    expect(beside.distanceM[cellOf(33.5, 20.5)]).toBeNaN();
    expect(beside.distanceM[cellOf(20.5, 21.5)]).toBeNaN();
  });

  test('has two sides of twenty metres, the larger first; a mask leaves one', () => {
    const [north, south] = sidesOf(beside, false, 100);
    expect(north.cells.length + south.cells.length).toBe(20 * 36);
    const half = all.map((_, cell) => (Math.floor(cell / 40) < 20 ? 1 : 0));
    const sides = sidesOf(besideEdge(grid, half, strip), false, 100);
    expect(sides).toHaveLength(1);
    expect(sides[0].facingRad).toBeCloseTo(0, 5);
    expect(sidesOf(beside, false, 5)[0].cells.length).toBe(20 * 5);
  });
});

test('beside a bend inside counts as it lies; outside of a sharp corner is beyond both ends', () => {
  const corner = {
    line: [
      [10, 30],
      [10, 10],
      [30, 10],
    ] as [number, number][],
    closed: false,
    halfWidthM: 0,
  };
  const { distanceM } = besideEdge(grid, all, corner);
  expect(distanceM[cellOf(15.5, 13.5)]).toBeCloseTo(3.5, 5);
  expect(distanceM[cellOf(5.5, 5.5)]).toBeNaN();
  const bend = {
    ...corner,
    line: [
      [10, 30],
      [10, 20],
      [16, 4],
    ] as [number, number][],
  };
  expect(besideEdge(grid, all, bend).distanceM[cellOf(3.5, 19.5)]).toBeGreaterThan(0);
});

test('beside a wood counts the side with most ground, and nothing inside or off its corners', () => {
  const ring = [
    [0, 30],
    [0, 40],
    [40, 40],
    [40, 30],
    [0, 30],
  ] as [number, number][];
  const beside = besideEdge(grid, all, { line: ring, closed: true, halfWidthM: 0 });
  expect(beside.distanceM[cellOf(20.5, 35.5)]).toBeNaN();
  expect(beside.distanceM[cellOf(20.5, 25.5)]).toBeCloseTo(4.5, 5);
  const [south] = sidesOf(beside, true, 100);
  expect(south.cells.length).toBe(40 * 30);
  expect(Math.abs(south.facingRad)).toBeCloseTo(Math.PI, 5);
});

test('bins hold means of their own cells, and a corner of the field is none', () => {
  const strip = {
    line: [
      [0, 0],
      [40, 0],
    ] as [number, number][],
    closed: false,
    halfWidthM: 0,
  };
  // A field of 40 by 20 m, and a tail of 2 m beyond.
  const mask = all.map((_, cell) => (40 - Math.floor(cell / 40) <= 20 || cell % 40 < 2 ? 1 : 0));
  const beside = besideEdge(grid, mask, strip);
  const [{ cells }] = sidesOf(beside, false, 100);
  const light = beside.distanceM.map((d) => d / 40);
  const bins = edgeBins(grid, beside, cells, { lightShare: light, windShare: light }, needs, 5);
  expect(bins.map(({ fromM, toM, areaM2 }) => [fromM, toM, areaM2])).toEqual([
    [0, 5, 200],
    [5, 10, 200],
    [10, 15, 200],
    [15, 20, 200],
  ]);
  expect(bins[1].lightShare).toBeCloseTo(7.5 / 40, 6);
  expect(bins[1].windCut).toBeCloseTo(1 - 7.5 / 40, 6);
  expect(binWidthM(0.5, 20)).toBe(1);
  expect(binWidthM(0.5, 200)).toBe(4);
});

test('each stretch has its use, and the best distance is where light and shelter together are most', () => {
  const bin = (k: number, lightShare: number, windCut: number): EdgeBin => ({
    fromM: 2 * k,
    toM: 2 * k + 2,
    atM: 2 * k + 1,
    areaM2: 10,
    lightShare,
    windCut,
    bothShare: 0,
  });
  const bins = [
    bin(0, 0.2, 0.6),
    bin(1, 0.4, 0.6),
    bin(2, 0.6, 0.6),
    bin(3, 0.7, 0.5),
    bin(4, 0.8, 0.45),
    bin(5, 0.9, 0.2),
    bin(6, 0.6, 0.1),
  ];
  const { stretches, bestSun, bestShade } = edgeYear(20, 10, bins, needs);
  expect(stretches).toEqual([
    { use: 'dark', fromM: 0, toM: 2 },
    { use: 'shade', fromM: 2, toM: 6 },
    { use: 'sun', fromM: 6, toM: 10 },
    { use: 'exposed', fromM: 10, toM: 12 },
    { use: 'neither', fromM: 12, toM: 14 },
  ]);
  expect(bestSun).toEqual({ atM: 9, lightShare: 0.8, windCut: 0.45 });
  expect(bestShade).toEqual({ atM: 5, lightShare: 0.6, windCut: 0.6 });
  expect(edgeYear(0, null, bins.slice(0, 1), needs)).toMatchObject({ bestSun: null, bestShade: null });
});
