import { describe, expect, it } from 'vitest';
import type { Barrier } from '../../src/crowns/barrier.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { looseTrees } from '../../src/wind/loose-trees.ts';
import type { ShelterRequest } from '../../src/wind/shelter-types.ts';
import { frictionShareAmongTrees } from '../../src/wind/tree-drag.ts';
import { frictionShare } from '../../src/wind/weps.ts';
import { ALL_GUESSES, area, cellAt, crownSet, line, NO_GUESSES, request, sector } from './shelter-scenes.ts';

const compute = (scene: ShelterRequest) => runToEnd(computeShelter(scene));
/** Share of open wind at (x, y), wind from the north unless told. */
const shareAt = (
  barriers: Barrier[],
  x: number,
  y: number,
  more: Parameters<typeof request>[1] = {},
): number => compute(request(barriers, { grid: cellAt(x, y), ...more })).windShare[0];

const longBelt = (more: Partial<Barrier> = {}) =>
  line(
    [
      [-900, 0],
      [900, 0],
    ],
    10,
    more,
  );

describe('a long belt across the wind', () => {
  it('leaves the WEPS share at every distance before and behind it', () => {
    for (const x of [-4, -2, -1, 0, 1, 2, 5, 10, 20, 30, 35]) {
      expect(shareAt([longBelt()], 3, -10 * x)).toBeCloseTo(frictionShare(0.4, x, 0), 4);
    }
  });
  it('has the published value 0.2004 at 5 H and porosity 0.4', () => {
    expect(shareAt([longBelt()], 0, -50)).toBeCloseTo(0.2004, 3);
  });
  it('reaches 5 H upwind and 35 H downwind and no farther', () => {
    expect(shareAt([longBelt()], 0, 50.5)).toBe(1);
    expect(shareAt([longBelt()], 0, 49.5)).toBeLessThan(1);
    expect(shareAt([longBelt()], 0, -350.5)).toBe(1);
  });
  it('counts its width in heights', () => {
    expect(shareAt([longBelt({ widthM: 10 })], 0, -50)).toBeCloseTo(0.2583, 3);
  });
  it('takes the longer way and the thicker foliage of a slanting wind', () => {
    const cos = Math.cos(Math.PI / 4);
    const expected = frictionShare(0.4 ** (1 / cos), 50 / cos / 10, 3 / cos / 10);
    expect(shareAt([longBelt({ widthM: 3 })], 0, -50, { growing: [sector(45)] })).toBeCloseTo(expected, 4);
    const straight = frictionShare(0.4, 50 / cos / 10, 0.3);
    const options = { ...ALL_GUESSES, obliqueWind: false };
    expect(shareAt([longBelt({ widthM: 3 })], 0, -50, { growing: [sector(45)], options })).toBeCloseTo(
      straight,
      4,
    );
  });
  it('interpolates an uneven height where the wind crosses', () => {
    const ends: [number, number][] = [
      [-100, 0],
      [100, 0],
    ];
    const share = shareAt([line(ends, [8, 12])], 50, -60);
    expect(share).toBeCloseTo(frictionShare(0.4, 60 / 11, 0), 4);
  });
  it('lets more through over a raised foot', () => {
    expect(shareAt([longBelt({ baseM: 2 })], 0, -50)).toBeCloseTo(frictionShare(0.4 + 0.6 * 0.2, 5, 0), 4);
  });
  it('gives nothing at the reading height or below, all from twice that height', () => {
    const low = (heightM: number) => longBelt({ heightM: Float64Array.of(heightM, heightM) });
    expect(shareAt([low(1.5)], 0, -5)).toBe(1);
    expect(1 - shareAt([low(2)], 0, -5)).toBeCloseTo((1 - frictionShare(0.4, 2.5, 0)) / 3, 4);
    expect(shareAt([low(3)], 0, -5)).toBeCloseTo(frictionShare(0.4, 5 / 3, 0), 4);
    const options = { ...ALL_GUESSES, youngBelts: false };
    expect(shareAt([low(2)], 0, -5, { options })).toBeCloseTo(frictionShare(0.4, 2.5, 0), 4);
  });
});

describe('short things, ends and gaps', () => {
  const short = (from: number, to: number, more: Partial<Barrier> = {}) =>
    line(
      [
        [from, 0],
        [to, 0],
      ],
      10,
      more,
    );
  it('shelter fades with distance over 1.4 lengths', () => {
    const full = 1 - frictionShare(0.4, 10, 0);
    expect(1 - shareAt([short(-5, 5)], 0, -100)).toBeCloseTo(0.14 * full, 4);
    const options = { ...ALL_GUESSES, shortThings: false };
    expect(1 - shareAt([short(-5, 5)], 0, -100, { options })).toBeCloseTo(full, 4);
  });
  it('counts touching belts as one length, and the corner has no end', () => {
    const corner = [
      short(-100, 0),
      line(
        [
          [0, 0],
          [0, -60],
        ],
        10,
      ),
    ];
    expect(1 - shareAt([short(-100, 0)], -50, -200)).toBeCloseTo(0.7 * (1 - frictionShare(0.4, 20, 0)), 4);
    const slanting = { growing: [sector(315)] };
    const apart = shareAt([corner[0]], -5, -290, slanting);
    expect(shareAt(corner, -5, -290, slanting)).toBeLessThanOrEqual(apart);
  });
  it('closes a gap of 0.4 m and keeps a gateway of 4 m', () => {
    const widths = { widthM: 6 };
    expect(shareAt([short(-200, -0.2, widths), short(0.2, 200, widths)], 0, -50)).toBeCloseTo(
      frictionShare(0.4, 5, 0.6),
      4,
    );
    const gate = shareAt([short(-200, -2, widths), short(2, 200, widths)], 0, -20);
    expect(gate).toBeGreaterThan(1);
    expect(gate).toBeLessThanOrEqual(1.2);
  });
  it('closes the corner that a belt leaves where it meets the side of another', () => {
    const side = line(
      [
        [2, -80],
        [2, 80],
      ],
      10,
      { widthM: 4 },
    );
    expect(shareAt([short(-200, 0, { widthM: 4 }), side], 1, -50)).toBeLessThan(0.5);
  });
  it('makes the wind faster beside an end: 0.2 (1 - p), falling to nothing at 2 H', () => {
    const belt = [short(-200, 0)];
    expect(shareAt(belt, 10, 0)).toBeCloseTo(1 + 0.2 * 0.6 * 0.5, 5);
    expect(shareAt(belt, 10, -25)).toBeCloseTo(1 + 0.2 * 0.6 * 0.5 * 0.5, 5);
    expect(shareAt(belt, 10, 10)).toBeCloseTo(1 + 0.2 * 0.6 * 0.5 * 0.5, 5);
    expect(shareAt(belt, 20.1, 0)).toBe(1);
    expect(shareAt(belt, 10, -50.1)).toBe(1);
    expect(shareAt(belt, 10, 0, { options: { ...ALL_GUESSES, endsAndGaps: false } })).toBe(1);
  });
  it('lets the smallest share of several belts win', () => {
    const second = line(
      [
        [-900, -60],
        [900, -60],
      ],
      10,
    );
    const alone = [longBelt(), second].map((belt) => shareAt([belt], 0, -90));
    expect(shareAt([longBelt(), second], 0, -90)).toBeCloseTo(Math.min(...alone), 6);
  });
});

describe('wind along a belt', () => {
  const along = line(
    [
      [0, 100],
      [0, -100],
    ],
    10,
  );
  it('is stiller beside it to four heights (published), half of what the belt takes at its line, falling linearly', () => {
    const atLine = 1 - frictionShare(0.4, 0, 0);
    for (const heights of [0.2, 1, 2, 3.9]) {
      for (const side of [-10, 10])
        expect(1 - shareAt([along], side * heights, 20)).toBeCloseTo(0.5 * atLine * (1 - heights / 4), 4);
    }
    expect(shareAt([along], 40.5, 20)).toBe(1);
    expect(shareAt([along], 20, 100.5)).toBeGreaterThanOrEqual(1);
    const options = { ...ALL_GUESSES, parallelWind: false };
    expect(shareAt([along], 20, 20, { options })).toBe(1);
  });
  it('ends where the wind meets the belt at more than 15 degrees', () => {
    const on = (fromDeg: number, parallelWind: boolean) =>
      // Upwind of the belt and beyond five heights along the ray, so that nothing else reaches it.
      shareAt([along], 25, 0, { growing: [sector(fromDeg)], options: { ...ALL_GUESSES, parallelWind } });
    expect(on(5, true)).toBeLessThan(on(5, false));
    expect(on(14, true)).toBeLessThan(on(14, false));
    expect(on(14.6, true)).toBe(on(14.6, false));
  });
});

describe('several belts', () => {
  it('by the chained rule multiply what each leaves', () => {
    const second = line(
      [
        [-900, -60],
        [900, -60],
      ],
      10,
    );
    const options = { ...ALL_GUESSES, chainedBelts: true };
    const alone = [longBelt(), second].map((belt) => shareAt([belt], 0, -150, { options }));
    expect(shareAt([longBelt(), second], 0, -150, { options })).toBeCloseTo(alone[0] * alone[1], 5);
    expect(shareAt([longBelt()], 0, -150, { options })).toBe(shareAt([longBelt()], 0, -150));
  });
});

describe('scattered trees', () => {
  const orchard = crownSet(
    Array.from({ length: 900 }, (_, i) => ({
      x: ((i % 30) - 14.5) * 8,
      y: (Math.floor(i / 30) - 14.5) * 8,
      topM: 6,
      baseM: 1,
      radiusM: 2,
    })),
  );
  it('slow the wind deep among them as their roughness density says', () => {
    // An ellipsoid of 5 m by 4 m: 15.7 m2, less what shows through, a tree for every 64 m2.
    const [{ areaOnM2, outlineM2 }] = looseTrees(orchard, [], 1.5, ALL_GUESSES);
    expect(outlineM2).toBeCloseTo(5 * Math.PI, 2);
    expect(shareAt([], 0, -110, { crowns: orchard })).toBeCloseTo(frictionShareAmongTrees(areaOnM2 / 64), 2);
  });
  it('slow it more and more into the orchard, and it comes back within twenty heights behind', () => {
    const down = [110, 80, 50, 20].map((y) => shareAt([], 3, y, { crowns: orchard }));
    for (let i = 1; i < down.length; i++) expect(down[i]).toBeLessThan(down[i - 1] + 1e-6);
    const behind = [-125, -150, -200, -270].map((y) => shareAt([], 3, y, { crowns: orchard }));
    for (let i = 1; i < behind.length; i++) expect(behind[i]).toBeGreaterThan(behind[i - 1]);
    expect(shareAt([], 3, -270, { crowns: orchard })).toBe(1);
  });
  it('of which one stands alone are felt, a little', () => {
    const one = crownSet([{ x: 0, y: 0, topM: 8, baseM: 1, radiusM: 3 }]);
    const share = shareAt([], 0, -5, { crowns: one });
    expect(share).toBeLessThan(0.95);
    expect(share).toBeGreaterThan(0.75);
  });
  it('in a belt are not counted twice: only what rises above it', () => {
    const inside = crownSet([{ x: 0, y: 0, topM: 8, baseM: 1, radiusM: 3 }]);
    const belt = (heightM: number) =>
      line(
        [
          [-200, 0],
          [200, 0],
        ],
        heightM,
        { widthM: 6 },
      );
    expect(looseTrees(inside, [belt(9)], 1.5, ALL_GUESSES)).toHaveLength(0);
    const [above] = looseTrees(inside, [belt(4.5)], 1.5, ALL_GUESSES);
    const [whole] = looseTrees(inside, [], 1.5, ALL_GUESSES);
    expect(above.outlineM2).toBeCloseTo(whole.outlineM2 / 2, 3);
    expect(shareAt([belt(9)], 0, -40, { crowns: inside })).toBe(shareAt([belt(9)], 0, -40));
    const wood = area(
      [
        [-20, -20],
        [20, -20],
        [20, 20],
        [-20, 20],
      ],
      12,
    );
    expect(looseTrees(inside, [wood], 1.5, ALL_GUESSES)).toHaveLength(0);
  });
  it('lose their drag with their leaves, to what their twigs keep', () => {
    const deciduous = { ...orchard, leafClass: orchard.leafClass.map(() => 1) };
    const { windShare } = compute(request([], { grid: cellAt(0, -100), crowns: deciduous }));
    expect(windShare[1]).toBeGreaterThan(windShare[0] + 0.05);
    expect(windShare[1]).toBeLessThan(0.9);
  });
  it('below the reading height do nothing', () => {
    const whips = crownSet([{ x: 0, y: 0, topM: 1.4, baseM: 0.2, radiusM: 0.5 }]);
    expect(shareAt([], 0, -2, { crowns: whips })).toBe(1);
  });
});

describe('areas', () => {
  const wood = area(
    [
      [-300, -20],
      [300, -20],
      [300, 20],
      [-300, 20],
    ],
    10,
    { porosityOn: 0.3, porosityOff: 0.3 },
  );
  it('shelter from the edge where the wind enters and behind the edge where it leaves', () => {
    expect(shareAt([wood], 0, 40)).toBeCloseTo(frictionShare(0.3, -2, 4), 4);
    expect(shareAt([wood], 0, -70)).toBeCloseTo(frictionShare(0.3, 5, 4), 4);
  });
  it('are stiller inside than at their edges', () => {
    const edge = shareAt([wood], 0, 20.01);
    const inside = [19.9, 15, 10, 0].map((y) => shareAt([wood], 0, y));
    expect(inside[0]).toBeCloseTo(edge, 2);
    for (let i = 1; i < inside.length; i++) expect(inside[i]).toBeLessThan(inside[i - 1]);
  });
  it('a building has no value inside and a short lee behind', () => {
    const house = area(
      [
        [-5, -4],
        [5, -4],
        [5, 4],
        [-5, 4],
      ],
      5,
      { porosityOn: 0, porosityOff: 0 },
    );
    const result = compute(request([house], { grid: cellAt(0, 0) }));
    expect([...result.windShare].every(Number.isNaN)).toBe(true);
    expect(1 - shareAt([house], 0, -104)).toBeCloseTo((14 / 100) * (1 - frictionShare(0, 20, 1.6)), 4);
  });
});

describe('seasons', () => {
  const deciduous = { leafClass: 1, porosityOn: 0.3, porosityOff: 0.7 };
  it('mix the leaf states of their days', () => {
    const result = compute(request([longBelt(deciduous)], { grid: cellAt(0, -50) }));
    const [bare, half, full] = [0.7, Math.sqrt(0.3 * 0.7), 0.3].map((p) => frictionShare(p, 5, 0));
    // 1 April to 30 September, 183 days: 15 bare, 30 half out, 138 in full leaf.
    expect(result.windShare[0]).toBeCloseTo((15 * bare + 30 * half + 138 * full) / 183, 4);
    // The other 182 days: 145 bare, 30 half, 7 full.
    expect(result.windShare[1]).toBeCloseTo((145 * bare + 30 * half + 7 * full) / 182, 4);
  });
  it('make a year by their hours and wind', () => {
    const more = { grid: cellAt(0, -50), growing: [sector(0, 0.9, 4)], rest: [sector(180, 0.8, 7)] };
    const { windShare, galeHours } = compute(request([longBelt()], more));
    const [g, r] = [183 * 0.9 * 4, 182 * 0.8 * 7];
    expect(windShare[2]).toBeCloseTo((g * windShare[0] + r * windShare[1]) / (g + r), 5);
    expect(galeHours[2]).toBeCloseTo(galeHours[0] + galeHours[1], 3);
  });
  it('count gale hours from the Weibull tail of the sheltered 10 m wind', () => {
    const more = { grid: cellAt(0, -50), growing: [sector(0, 0.9, 8)] };
    const { windShare, galeHours } = compute(request([longBelt()], more));
    const scale = (windShare[0] * 8) / (Math.sqrt(Math.PI) / 2);
    expect(galeHours[0]).toBeCloseTo(183 * 24 * 0.9 * Math.exp(-((10.8 / scale) ** 2)), 2);
    const open = compute(request([], more)).galeHours[0];
    expect(open).toBeCloseTo(183 * 24 * 0.9 * Math.exp(-((10.8 / (8 / (Math.sqrt(Math.PI) / 2))) ** 2)), 2);
  });
  it('a season without a day has no hours but still a share', () => {
    const scene = request([longBelt()], { grid: cellAt(0, -50) });
    const none = compute({ ...scene, scene: { ...scene.scene, growingDay: new Uint8Array(365) } });
    expect(none.galeHours[0]).toBe(0);
    expect(none.windShare[2]).toBeCloseTo(none.windShare[1], 6);
  });
});

describe('directions', () => {
  it('turn by the grid convergence', () => {
    const turned = shareAt([longBelt()], 40, -50, { growing: [sector(30)], convergenceRad: Math.PI / 6 });
    expect(turned).toBeCloseTo(shareAt([longBelt()], 40, -50), 6);
  });
  it('an even rose of eight is sampled by five directions a sector, another list as it stands', () => {
    const rose = Array.from({ length: 8 }, (_, i) => sector(i * 45, 1 / 8));
    expect(compute(request([], { growing: rose })).directions).toBe(40);
    expect(compute(request([], { growing: rose.slice(1) })).directions).toBe(7);
    const list = rose.flatMap(({ fromDeg }) =>
      [-18, -9, 0, 9, 18].map((d) => sector((fromDeg + d + 360) % 360, 1 / 40)),
    );
    expect(shareAt([longBelt()], 0, -80, { growing: rose })).toBeCloseTo(
      shareAt([longBelt()], 0, -80, { growing: list }),
      5,
    );
  });
});

describe('the field itself', () => {
  it('without anything on it has no wind cut anywhere, exactly', () => {
    const growing = Array.from({ length: 16 }, (_, i) => sector(i * 22.5, 0.06, 3 + i / 7));
    const { windShare } = compute(
      request([], { growing, grid: { columns: 40, rows: 40, cellM: 1, westM: 0, northM: 40 } }),
    );
    expect(windShare.every((share) => share === 1)).toBe(true);
  });
  it('has no value where the ground is missing', () => {
    const scene = request([longBelt()], { grid: { columns: 2, rows: 1, cellM: 10, westM: 0, northM: 10 } });
    const ground = {
      columns: 2,
      rows: 1,
      cellM: 10,
      westM: 0,
      northM: 10,
      values: Float32Array.of(5, Number.NaN),
    };
    const { windShare, galeHours } = compute({ ...scene, scene: { ...scene.scene, ground } });
    expect(Number.isNaN(windShare[0])).toBe(false);
    expect(Number.isNaN(windShare[1]) && Number.isNaN(galeHours[5])).toBe(true);
  });
  it('refuses a porosity above 1 and a negative height', () => {
    expect(() => shareAt([longBelt({ porosityOn: 1.2 })], 0, 0)).toThrow(BadInputError);
    expect(() => shareAt([longBelt({ heightM: Float64Array.of(5, -1) })], 0, 0)).toThrow(BadInputError);
  });
  it('reports progress that rises while it works', () => {
    const growing = Array.from({ length: 16 }, (_, i) => sector(i * 22.5, 1 / 16));
    const grid = { columns: 600, rows: 600, cellM: 1, westM: -300, northM: 300 };
    const barriers = Array.from({ length: 12 }, () => longBelt());
    const seen = [...computeShelter(request(barriers, { growing, grid, options: NO_GUESSES }))];
    expect(seen.length).toBeGreaterThan(2);
    expect(seen.every((done, i) => done >= 0 && done < 1 && (i === 0 || done >= seen[i - 1]))).toBe(true);
  });
});
