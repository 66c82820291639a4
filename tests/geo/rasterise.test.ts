import { describe, expect, it } from 'vitest';
import { frameAt, type LocalXY } from '../../src/geo/frame.ts';
import { localBoxOf } from '../../src/geo/local-box.ts';
import { areaLess, areasTogether, selfCrossing } from '../../src/geo/polygon.ts';
import { cellsInside, ringToLocal, ringToLonLat } from '../../src/geo/rasterise.ts';
import { seededRandom } from '../../src/numeric/random.ts';

const spec = { columns: 8, rows: 5, cellM: 1, westM: 0, northM: 5 };
const drawn = (mask: Uint8Array, columns: number): string[] =>
  [...Array(mask.length / columns)].map((_, r) =>
    [...mask.subarray(r * columns, (r + 1) * columns)].map((cell) => (cell ? '#' : '.')).join(''),
  );

describe('cells inside a polygon', () => {
  it('are those whose centres are inside, holes left out', () => {
    const outer: LocalXY[] = [
      [1, 0],
      [7, 0],
      [7, 5],
      [1, 5],
      [1, 0],
    ];
    const hole: LocalXY[] = [
      [3, 2],
      [5, 2],
      [5, 4],
      [3, 4],
    ];
    expect(drawn(cellsInside(spec, [outer, hole]), 8)).toEqual([
      '.######.',
      '.##..##.',
      '.##..##.',
      '.######.',
      '.######.',
    ]);
  });

  it('of polygons that share sides through cell centres are counted once', () => {
    const left: LocalXY[] = [
      [-1, -1],
      [3.5, -1],
      [3.5, 6],
      [-1, 6],
    ];
    const right: LocalXY[] = [
      [3.5, -1],
      [9, -1],
      [9, 6],
      [3.5, 6],
    ];
    const upper: LocalXY[] = [
      [0, 2.5],
      [8, 2.5],
      [8, 9],
      [0, 9],
    ];
    const lower: LocalXY[] = [
      [0, 2.5],
      [8, 2.5],
      [8, -9],
      [0, -9],
    ];
    for (const [a, b] of [
      [left, right],
      [upper, lower],
    ]) {
      const first = cellsInside(spec, [a]);
      const second = cellsInside(spec, [b]);
      for (let i = 0; i < 40; i++) expect(first[i] + second[i]).toBe(1);
    }
  });

  it('agree with a test of every centre on seeded stars', () => {
    const random = seededRandom(11);
    const big = { columns: 60, rows: 50, cellM: 0.7, westM: -20, northM: 18 };
    for (let star = 0; star < 20; star++) {
      const ring: LocalXY[] = [...Array(9)].map((_, k): LocalXY => {
        const radius = 4 + 14 * random();
        return [radius * Math.cos((k * 2 * Math.PI) / 9), radius * Math.sin((k * 2 * Math.PI) / 9)];
      });
      const mask = cellsInside(big, [ring]);
      for (let i = 0; i < mask.length; i++) {
        const x = big.westM + ((i % 60) + 0.5) * big.cellM;
        const y = big.northM - (Math.floor(i / 60) + 0.5) * big.cellM;
        expect(mask[i] === 1).toBe(windingInside(ring, x, y));
      }
    }
  });

  it('do not exist for a polygon beside the grid', () => {
    expect(
      cellsInside(spec, [
        [
          [20, 0],
          [30, 0],
          [25, 5],
        ],
      ]).some((cell) => cell === 1),
    ).toBe(false);
  });
});

function windingInside(ring: readonly LocalXY[], x: number, y: number): boolean {
  let angle = 0;
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length];
    angle += Math.atan2((ax - x) * (by - y) - (ay - y) * (bx - x), (ax - x) * (bx - x) + (ay - y) * (by - y));
  });
  return Math.abs(angle) > Math.PI;
}

describe('rings between frames', () => {
  it('return to where they were', () => {
    const frame = frameAt([171.9, -43.6]);
    const ring: LocalXY[] = [
      [0, 0],
      [120, 3],
      [80, -90],
    ];
    const back = ringToLocal(frame, ringToLonLat(frame, ring));
    back.forEach(([x, y], i) => {
      expect(x).toBeCloseTo(ring[i][0], 5);
      expect(y).toBeCloseTo(ring[i][1], 5);
    });
    const box = localBoxOf(frame, ringToLonLat(frame, ring));
    expect(box?.east).toBeCloseTo(120, 5);
    expect(box?.south).toBeCloseTo(-90, 5);
    expect(localBoxOf(frame, [])).toBeNull();
  });
});

describe('polygons', () => {
  const square = (x: number, y: number, size: number) => ({
    type: 'Polygon' as const,
    coordinates: [
      [
        [x, y],
        [x + size, y],
        [x + size, y + size],
        [x, y + size],
        [x, y],
      ],
    ],
  });
  it('that cross themselves say where', () => {
    expect(
      selfCrossing([
        [
          [0, 0],
          [1, 1],
          [1, 0],
          [0, 1],
          [0, 0],
        ],
      ]),
    ).toEqual([0.5, 0.5]);
    expect(selfCrossing(square(0, 0, 1).coordinates)).toBeNull();
  });
  it('lose what is cut out and melt together', () => {
    expect(areaLess(square(0, 0, 2), [square(1, 0, 2)])).toMatchObject({ type: 'Polygon' });
    expect(areaLess(square(0, 0, 1), [square(-1, -1, 3)])).toBeNull();
    expect(areasTogether([square(0, 0, 1), square(5, 5, 1)])?.type).toBe('MultiPolygon');
    expect(areasTogether([square(0, 0, 1), square(0.5, 0, 1)])?.type).toBe('Polygon');
    expect(areasTogether([])).toBeNull();
  });
});
