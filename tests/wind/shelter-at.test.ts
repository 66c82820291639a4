import { describe, expect, it } from 'vitest';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { reliefOf } from '../../src/wind/relief.ts';
import { computeShelterAt } from '../../src/wind/shelter-at.ts';
import {
  ALL_GUESSES,
  area,
  crownSet,
  line,
  NO_GUESSES,
  request,
  sector,
  seededBarriers,
  seededTrees,
} from './shelter-scenes.ts';

const at = (scene: ReturnType<typeof request>, xM: number, yM: number) => {
  const { grid: _, ...rest } = scene;
  return runToEnd(computeShelterAt({ ...rest, xM, yM }));
};
const sixteen = Array.from({ length: 16 }, (_, i) => sector(i * 22.5, (1 + (i % 3)) / 32, 3 + (i % 4), 2));
const fewRest = [sector(225, 0.4, 6, 2), sector(300, 0.3, 4, 1.8), sector(33, 0.2, 7, 2.2)];

const hill = reliefOf({
  columns: 40,
  rows: 40,
  cellM: 10,
  westM: -200,
  northM: 200,
  values: Float32Array.from({ length: 1600 }, (_, i) => {
    const [x, y] = [(i % 40) * 10 - 195, 195 - Math.floor(i / 40) * 10];
    return 15 * Math.exp(-(x * x + (y - 20) ** 2) / 5000);
  }),
});

describe('the shelter of one spot', () => {
  it('adds up to the map at that cell, to float rounding, on seeded scenes with two seasons, trees and a hill', () => {
    let compared = 0;
    const off: number[] = [];
    for (const seed of [1, 2, 4]) {
      const scene = request(seededBarriers(seed), {
        growing: sixteen,
        rest: fewRest,
        convergenceRad: 0.03,
        relief: seed === 2 ? hill : null,
        crowns: seed === 1 ? undefined : crownSet(seededTrees(seed)),
        grid: { columns: 6, rows: 6, cellM: 31, westM: -93, northM: 93 },
        options: seed === 4 ? NO_GUESSES : ALL_GUESSES,
      });
      const map = runToEnd(computeShelter(scene));
      for (const cell of [8, 21, 34]) {
        const share = [0, 1, 2].map((band) => map.windShare[band * 36 + cell]);
        if (Number.isNaN(share[0])) continue;
        const spot = at(scene, -93 + ((cell % 6) + 0.5) * 31, 93 - (Math.floor(cell / 6) + 0.5) * 31);
        for (const band of [0, 1, 2]) {
          let run = 0;
          let open = 0;
          for (const { frequency, openSpeedMps, share: left } of spot.sectors) {
            const weight = frequency[band] * openSpeedMps[band];
            open += weight;
            if (weight > 0) run += weight * left[band];
          }
          off.push(Math.abs(run / open - share[band]), Math.abs(spot.windShare[band] - share[band]));
          expect(spot.galeHours[band]).toBeCloseTo(map.galeHours[band * 36 + cell], 2);
        }
        compared++;
      }
    }
    console.log(
      `shelter at a spot: ${compared} cells, most off the map ${Math.max(...off).toExponential(1)}`,
    );
    expect(compared).toBeGreaterThan(6);
    expect(Math.max(...off)).toBeLessThan(1e-6);
  });

  it('names the belt that shelters, its distance along the wind and its height', () => {
    const west = line(
      [
        [-50, -300],
        [-50, 300],
      ],
      10,
      { thing: 3 },
    );
    const spot = at(request([west], { growing: [sector(270), sector(90)] }), 0, 0);
    const [fromEast, fromWest] = spot.sectors;
    expect(fromEast.fromDeg).toBe(90);
    expect(fromWest.by).toHaveLength(1);
    expect(fromWest.by[0]).toMatchObject({ thing: 3, heightM: 10 });
    expect(fromWest.by[0].distanceM).toBeCloseTo(50, 9);
    expect(fromWest.by[0].cut[2]).toBeCloseTo(1 - fromWest.share[2], 6);
    // 5 H on the other side of it: the wind does not know it yet.
    expect(fromEast.by).toHaveLength(0);
    expect(fromEast.share[0]).toBe(1);
  });

  it('measures a slanting wind along the wind', () => {
    const west = line(
      [
        [-50, -300],
        [-50, 300],
      ],
      10,
      { thing: 3 },
    );
    const spot = at(request([west], { growing: [sector(225)] }), 0, 0);
    expect(spot.sectors[0].by[0].distanceM).toBeCloseTo(50 * Math.SQRT2, 9);
  });

  it('says what comes back if one thing alone were gone: the scene drawn without it', () => {
    const near = line(
      [
        [-50, -300],
        [-50, 300],
      ],
      10,
      { thing: 0 },
    );
    const far = line(
      [
        [-90, -300],
        [-90, 300],
      ],
      10,
      { thing: 1 },
    );
    const [both, alone] = [[near, far], [far]].map((barriers) =>
      at(request(barriers, { growing: sixteen, rest: fewRest }), 0, 0),
    );
    const nearWorth = both.things.find(({ thing }) => thing === 0);
    for (const band of [0, 1, 2])
      expect(nearWorth?.comesBack[band]).toBeCloseTo(alone.windShare[band] - both.windShare[band], 6);
    // Behind the near belt the far one adds little: the strongest counts.
    const farWorth = both.things.find(({ thing }) => thing === 1)?.comesBack[2] ?? 0;
    expect(farWorth).toBeLessThan((nearWorth?.comesBack[2] ?? 0) / 3);
  });

  it('knows the inside of a wood and that nothing is known inside a building', () => {
    const wood = area(
      [
        [-30, -30],
        [30, -30],
        [30, 30],
        [-30, 30],
      ],
      12,
      { thing: 2 },
    );
    const inside = at(request([wood], { growing: [sector(0)] }), 3, 4);
    expect(inside.sectors[0].by[0]).toMatchObject({ thing: 2, distanceM: 0, heightM: 12 });
    const barn = area(
      [
        [-30, -30],
        [30, -30],
        [30, 30],
        [-30, 30],
      ],
      12,
      { porosityOn: 0, porosityOff: 0 },
    );
    const closed = at(request([barn]), 3, 4);
    expect(closed.windShare[2]).toBeNaN();
    expect(closed.sectors).toHaveLength(0);
  });

  it('leaves a direction without wind in a season unknown there', () => {
    const belt = line(
      [
        [-50, -300],
        [-50, 300],
      ],
      10,
    );
    const spot = at(request([belt], { growing: [sector(270)], rest: [sector(0)] }), 0, 0);
    expect(spot.sectors.map(({ fromDeg }) => fromDeg)).toEqual([0, 270]);
    expect(spot.sectors[1].share[1]).toBeNaN();
    expect(spot.sectors[1].frequency[1]).toBe(0);
    expect(spot.sectors[1].share[0]).toBeLessThan(1);
  });
});
