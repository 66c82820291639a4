import { describe, expect, it } from 'vitest';
import { ageAtHeight, curveOnSite, heightAtAge } from '../../src/growth/height-curve.ts';

const curve = { maxHeightM: 20, ratePerYear: 0.06, shape: 1.6 };

describe('height curve', () => {
  it('starts at nothing, never falls, and stays under its final height', () => {
    let last = heightAtAge(curve, 0);
    expect(last).toBe(0);
    for (let age = 1; age <= 200; age++) {
      const height = heightAtAge(curve, age);
      expect(height).toBeGreaterThan(last);
      expect(height).toBeLessThan(20);
      last = height;
    }
  });

  it('gives back the age of each height', () => {
    for (const age of [0.5, 1, 5, 17.25, 60, 120]) {
      expect(ageAtHeight(curve, heightAtAge(curve, age))).toBeCloseTo(age, 6);
    }
  });

  it('has no age for its final height, and age 0 for none', () => {
    expect(ageAtHeight(curve, 20)).toBe(Number.POSITIVE_INFINITY);
    expect(ageAtHeight(curve, 0)).toBe(0);
    expect(heightAtAge(curve, -3)).toBe(0);
  });

  it('is higher at every age on a faster pace and on a stronger rootstock', () => {
    for (const age of [2, 10, 40]) {
      const slow = heightAtAge(curveOnSite(curve, 1, 'slow'), age);
      const usual = heightAtAge(curveOnSite(curve, 1, 'usual'), age);
      const fast = heightAtAge(curveOnSite(curve, 1, 'fast'), age);
      expect(slow).toBeLessThan(usual);
      expect(fast).toBeGreaterThan(usual);
      expect(heightAtAge(curveOnSite(curve, 0.4, 'usual'), age)).toBeCloseTo(0.4 * usual, 9);
    }
  });
});
