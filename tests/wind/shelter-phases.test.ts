import { describe, expect, it } from 'vitest';
import type { LeafPhases } from '../../src/crowns/leaf-phases.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { USUAL_FINENESS } from '../../src/wind/fineness.ts';
import { porosityAtLeafShare, shelterSeasons } from '../../src/wind/shelter-phases.ts';
import { referenceShelter } from '../reference/shelter-reference.ts';
import { growingDay, leaf, line, request, sector } from './shelter-scenes.ts';

describe('porosity between bare and full leaf', () => {
  it('mixes optical depths', () => {
    expect(porosityAtLeafShare(0.4, 0.7, 0.5)).toBeCloseTo(Math.sqrt(0.28), 12);
    expect(porosityAtLeafShare(0.4, 0.7, 1)).toBe(0.4);
    expect(porosityAtLeafShare(0.4, 0.7, 0)).toBe(0.7);
  });
  it('leaves a wall solid and no foliage tighter than one in a hundred', () => {
    expect(porosityAtLeafShare(0, 0, 0.3)).toBe(0);
    expect(porosityAtLeafShare(0, 0.0001, 0.3)).toBeCloseTo(0.01, 12);
  });
});

/** Class 0 evergreen; the leaves of the others come out and fall over weeks, so many days later, in steps of a quarter. */
function leavesComingOut(shifts: readonly number[]): LeafPhases {
  const ramp = (day: number, shift: number) =>
    Math.round(
      4 * Math.min(1, Math.max(0, (day - 98 - shift) / 24), Math.max(0, (320 - shift / 2 - day) / 30)),
    ) / 4;
  const states = new Map<string, number>();
  const phaseOfDay = new Uint8Array(365);
  const shares: number[] = [];
  for (let day = 0; day < 365; day++) {
    const own = [1, ...shifts.map((shift) => ramp(day, shift))];
    const key = own.join();
    if (!states.has(key)) {
      states.set(key, states.size);
      shares.push(...own);
    }
    phaseOfDay[day] = states.get(key) as number;
  }
  return {
    classCount: 1 + shifts.length,
    phaseCount: states.size,
    phaseOfDay,
    leafShare: Float32Array.from(shares),
  };
}

describe('leaf states', () => {
  const deciduous = line(
    [
      [-60, 0],
      [60, 0],
    ],
    10,
    { leafClass: 1, porosityOn: 0.35, porosityOff: 0.7 },
  );
  it('count as one where nothing drops its leaves', () => {
    const { phases } = shelterSeasons(leaf, growingDay, [{ ...deciduous, porosityOff: 0.35 }], [], 6);
    expect(phases).toHaveLength(1);
    expect([phases[0].growingWeight, phases[0].restWeight]).toEqual([1, 1]);
  });
  it('weigh each season by its days', () => {
    const { phases, growingHours, restHours } = shelterSeasons(leaf, growingDay, [deciduous], [], 6);
    expect(phases.map(({ growingWeight }) => Math.round(growingWeight * 183))).toEqual([15, 30, 138]);
    expect([growingHours, restHours]).toEqual([183 * 24, 182 * 24]);
  });
  it('do not count a class of leaves that never changes, whatever its two porosities', () => {
    const evergreen = { ...deciduous, leafClass: 0, porosityOff: 0.6 };
    const { phases } = shelterSeasons(leaf, growingDay, [evergreen], [], 4);
    expect(phases).toHaveLength(1);
  });
  it('the bare one stays apart from those between where they are gathered, beside what never changes', () => {
    const evergreen = { ...deciduous, leafClass: 0, porosityOff: 0.6 };
    const { phases } = shelterSeasons(leavesComingOut([0]), growingDay, [deciduous, evergreen], [], 4);
    expect(phases.map(({ leafShare }) => leafShare[1]).filter((share) => share === 0 || share === 1)).toEqual(
      [0, 1],
    );
  });
  it.each([
    [6, 0.002, USUAL_FINENESS],
    [4, 0.006, { ...USUAL_FINENESS, leafStates: 4 }],
  ] as const)(
    'many of them gathered into %i move a share of open wind by less than %d',
    (_, least, fineness) => {
      const turningLeaves = leavesComingOut([0, 10, 22]);
      expect(turningLeaves.phaseCount).toBeGreaterThan(10);
      const barriers = [1, 2, 3].map((leafClass) =>
        line(
          [
            [-60, -40 * leafClass],
            [60, -40 * leafClass],
          ],
          8,
          { leafClass, porosityOn: 0.35, porosityOff: 0.7, widthM: 2 },
        ),
      );
      const scene = request(barriers, {
        growing: [sector(10, 0.5, 4), sector(200, 0.5, 5)],
        grid: { columns: 15, rows: 20, cellM: 10, westM: -75, northM: 40 },
      });
      const turning = {
        ...scene,
        fineness,
        scene: {
          ...scene.scene,
          leaf: turningLeaves,
        },
      };
      const { phases: gathered } = shelterSeasons(
        turning.scene.leaf,
        growingDay,
        barriers,
        [],
        fineness.leafStates,
      );
      expect(gathered).toHaveLength(fineness.leafStates);
      const fast = runToEnd(computeShelter(turning)).windShare;
      const slow = referenceShelter(turning).windShare;
      const most = fast.reduce((worst, share, i) => Math.max(worst, Math.abs(share - slow[i])), 0);
      console.log(
        `${turningLeaves.phaseCount} leaf states gathered: share differs by at most ${most.toFixed(5)}`,
      );
      expect(most).toBeLessThan(least);
    },
  );
});
