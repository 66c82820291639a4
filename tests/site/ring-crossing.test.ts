import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/numeric/random.ts';
import { ringFault } from '../../src/site/ring-crossing.ts';

type P = [number, number];
const closed = (points: P[]): P[] => [...points, points[0]];
const fault = (points: P[]) => ringFault(closed(points))?.fault ?? null;

/** The slow and obvious way: every pair of sides that are not neighbours. */
function crossesSlowly(points: P[]): boolean {
  const n = points.length;
  const side = (a: P, b: P, p: P) => Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));
  for (let i = 0; i < n; i++)
    for (let k = i + 2; k < n; k++) {
      if (i === 0 && k === n - 1) continue;
      const [a, b, c, d] = [points[i], points[(i + 1) % n], points[k], points[(k + 1) % n]];
      if (side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b)) return true;
    }
  return false;
}

describe('rings', () => {
  it('are sound when drawn as people draw fields', () => {
    expect(
      fault([
        [0, 0],
        [4, 0],
        [4, 3],
        [2, 1],
        [0, 3],
      ]),
    ).toBeNull();
    expect(
      fault([
        [0, 0],
        [1, 0],
        [1, 0],
        [1, 1],
      ]),
    ).toBeNull();
    expect(
      fault([
        [0, 0],
        [2, 0],
        [4, 0],
        [4, 4],
        [0, 4],
      ]),
    ).toBeNull();
  });

  it('may not cross, touch or fold back on themselves', () => {
    expect(
      fault([
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ]),
    ).toBe('crosses itself');
    // A corner on another side, two loops that share a corner, and a side laid over another.
    expect(
      fault([
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ]),
    ).toBe('crosses itself');
    expect(
      fault([
        [0, 0],
        [1, 1],
        [2, 0],
        [2, 2],
        [1, 1],
        [0, 2],
      ]),
    ).toBe('crosses itself');
    expect(
      fault([
        [0, 0],
        [4, 0],
        [4, 2],
        [3, 0],
        [1, 0],
        [0, 2],
      ]),
    ).toBe('crosses itself');
    expect(
      fault([
        [0, 0],
        [1, 0],
        [2, 0],
      ]),
    ).toBe('has no area');
  });

  it('agree with comparing every pair, on random rings, turned any way round', () => {
    const random = seededRandom(5);
    let crossing = 0;
    for (let trial = 0; trial < 600; trial++) {
      const n = 3 + Math.floor(random() * 6);
      const points = Array.from({ length: n }, (): P => [random(), random()]);
      const expected = crossesSlowly(points);
      if (expected) crossing++;
      expect(fault(points) === 'crosses itself', JSON.stringify(points)).toBe(expected);
      expect(fault([...points.slice(2), ...points.slice(0, 2)]) === 'crosses itself').toBe(expected);
      expect(fault(points.toReversed()) === 'crosses itself').toBe(expected);
    }
    expect(crossing).toBeGreaterThan(100);
    expect(crossing).toBeLessThan(500);
  });

  it('may have twenty thousand corners', () => {
    const n = 20_000;
    const points = Array.from({ length: n }, (_, i): P => {
      const turn = (2 * Math.PI * i) / n;
      const radius = 1 + 0.2 * Math.sin(90 * turn);
      return [radius * Math.cos(turn), radius * Math.sin(turn)];
    });
    expect(fault(points)).toBeNull();
  });
});
