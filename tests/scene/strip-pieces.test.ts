import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/numeric/random.ts';
import { doubleArea, isConvex, type Ring } from '../../src/scene/convex.ts';
import { polygonPieces } from '../../src/scene/polygon-pieces.ts';
import { outlineOf, stripPieces } from '../../src/scene/strip-pieces.ts';

const areaOf = (pieces: readonly Ring[]) => pieces.reduce((sum, ring) => sum + doubleArea(ring) / 2, 0);

const contains = (ring: Ring, x: number, y: number, margin: number): boolean =>
  ring.every((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length < 1e-9) return true;
    return ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / length >= margin;
  });

const distanceToLine = (line: readonly (readonly [number, number])[], x: number, y: number): number =>
  Math.min(
    ...line.slice(1).map(([x1, y1], i) => {
      const [x0, y0] = line[i];
      const l2 = (x1 - x0) ** 2 + (y1 - y0) ** 2;
      const t = Math.min(1, Math.max(0, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / l2));
      return Math.hypot(x - x0 - t * (x1 - x0), y - y0 - t * (y1 - y0));
    }),
  );

const LINES: Record<string, [number, number][]> = {
  straight: [
    [0, 0],
    [40, 0],
  ],
  'right angle': [
    [0, 0],
    [30, 0],
    [30, 30],
  ],
  'gentle bends': [
    [0, 0],
    [20, 3],
    [40, -2],
    [55, 12],
  ],
  hairpin: [
    [0, 0],
    [30, 0],
    [2, 3],
  ],
  'closed loop': [
    [0, 0],
    [30, 0],
    [30, 25],
    [-2, 20],
    [0.5, 1],
  ],
  'short steps': [
    [0, 0],
    [1, 0.8],
    [2, 0],
    [3, 0.8],
    [12, 0],
  ],
};

describe('a belt cut into pieces', () => {
  for (const [name, line] of Object.entries(LINES)) {
    it(`covers its strip once and nothing else: ${name}`, () => {
      const widthM = 4;
      const pieces = stripPieces(line, widthM);
      for (const ring of pieces) expect(isConvex(ring)).toBe(true);
      const random = seededRandom(7);
      let checked = 0;
      for (let i = 0; i < 4000; i++) {
        const x = -6 + 70 * random();
        const y = -10 + 50 * random();
        const away = distanceToLine(line, x, y);
        const sure = pieces.filter((ring) => contains(ring, x, y, 1e-6)).length;
        const maybe = pieces.filter((ring) => contains(ring, x, y, -1e-6)).length;
        // Round joins are drawn with corners every 22.5 degrees: at most 2 % of the half width short.
        if (away > widthM / 2 + 1e-6) expect(maybe).toBe(0);
        expect(sure).toBeLessThanOrEqual(1);
        const beyondEnd =
          Math.hypot(x - line[0][0], y - line[0][1]) < widthM ||
          Math.hypot(x - line.at(-1)![0], y - line.at(-1)![1]) < widthM;
        if (away < 0.98 * (widthM / 2) && !beyondEnd) {
          expect(maybe).toBeGreaterThanOrEqual(1);
          checked++;
        }
      }
      expect(checked).toBeGreaterThan(10);
    });
  }

  it('has flat ends and the area of its length times its width', () => {
    expect(areaOf(stripPieces(LINES.straight, 4))).toBeCloseTo(160, 9);
    // Two arms, less the inner overlap, plus a quarter disc outside drawn with four corners: 8 sin(22.5 degrees) for r = 2.
    expect(areaOf(stripPieces(LINES['right angle'], 4))).toBeCloseTo(240 - 4 + 8 * Math.sin(Math.PI / 8), 9);
  });

  it('has one outline', () => {
    expect(outlineOf(stripPieces(LINES['gentle bends'], 4))).toHaveLength(1);
  });
});

describe('a polygon cut into convex pieces', () => {
  it('keeps its area, leaves its hole open and joins triangles', () => {
    const outer: Ring = [
      [0, 0],
      [20, 0],
      [20, 20],
      [0, 20],
    ];
    const hole: Ring = [
      [5, 5],
      [5, 15],
      [15, 15],
      [15, 5],
    ];
    const pieces = polygonPieces([outer, hole]);
    expect(areaOf(pieces)).toBeCloseTo(300, 9);
    expect(pieces.length).toBeLessThanOrEqual(6);
    expect(polygonPieces([outer])).toHaveLength(1);
  });
});
