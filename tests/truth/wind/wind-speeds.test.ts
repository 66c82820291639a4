import { describe, expect, it } from 'vitest';
import { BEAUFORT_SCALE, beaufortForce } from '../../../src/wind/beaufort.ts';
import { climateFacts } from '../../../src/wind/climate-facts.ts';
import {
  profileRatio,
  ROUGHNESS_CLASSES,
  roughnessClass,
  speedAt2mOverGrass,
  speedElsewhere,
} from '../../../src/wind/profile.ts';
import type { ClimateSector } from '../../../src/wind/shelter-types.ts';
import {
  exceedanceShare,
  gamma,
  weibullDensity,
  weibullScale,
  weibullShape,
} from '../../../src/wind/weibull.ts';

describe('Beaufort scale (published lower limits, m/s)', () => {
  const METRES = [0, 0.3, 1.6, 3.4, 5.5, 8, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7];
  it('has the published limits in metres a second', () => {
    expect(BEAUFORT_SCALE.map(({ fromMps }) => fromMps)).toEqual(METRES);
    METRES.forEach((speed, force) => {
      expect(beaufortForce(speed).force).toBe(force);
      if (force > 0) expect(beaufortForce(speed - 0.01).force).toBe(force - 1);
    });
  });
  it('follows v = 0.836 (B - 1/2)^1.5, the relation behind the scale (from memory), to the tenth it is printed in', () => {
    for (const { force, fromMps } of BEAUFORT_SCALE.slice(1))
      expect(Math.abs(0.836 * (force - 0.5) ** 1.5 - fromMps), `force ${force}`).toBeLessThanOrEqual(0.1);
  });
});

describe('logarithmic profile (Davenport-Wieringa classes: Stull; WMO codes)', () => {
  it('has the published roughness lengths', () => {
    expect(ROUGHNESS_CLASSES.map(({ roughnessM }) => roughnessM)).toEqual([
      0.0002, 0.005, 0.03, 0.1, 0.25, 0.5, 1, 2,
    ]);
  });
  it('is ln(z / z0): 2 m from 10 m over z0 = 0.03 is 0.7229', () => {
    expect(profileRatio(10, 2, 0.03)).toBeCloseTo(Math.log(2 / 0.03) / Math.log(10 / 0.03), 12);
    expect(profileRatio(10, 2, 0.03)).toBeCloseTo(0.723, 3);
    expect(
      speedElsewhere(5, { heightM: 10, roughnessM: 0.03 }, { heightM: 2, roughnessM: 0.03 }),
    ).toBeCloseTo(3.615, 3);
  });
  it('slows the wind over rougher land', () => {
    const at10 = (roughnessM: number) =>
      speedElsewhere(5, { heightM: 10, roughnessM: 0.03 }, { heightM: 10, roughnessM });
    expect(at10(0.25)).toBeLessThan(5);
    expect(at10(0.0002)).toBeGreaterThan(5);
  });
});

describe('moving the wind over other land through 60 m (Wieringa 1986)', () => {
  const at10 = (roughnessM: number) => ({ heightM: 10, roughnessM });
  it('has the ratios worked out by hand from ln(60/z0) and ln(10/z0) of the published classes', () => {
    // ln(60/z0), ln(10/z0): 0.03 7.6009, 5.8091; 0.1 6.3969, 4.6052; 0.25 5.4806, 3.6889; 0.5 4.7875, 2.9957; 1 4.0943, 2.3026.
    for (const [roughnessM, ratio] of [
      [0.03, 1],
      [0.1, (7.6009 / 5.8091) * (4.6052 / 6.3969)],
      [0.25, (7.6009 / 5.8091) * (3.6889 / 5.4806)],
      [0.5, (7.6009 / 5.8091) * (2.9957 / 4.7875)],
      [1, (7.6009 / 5.8091) * (2.3026 / 4.0943)],
    ])
      expect(speedElsewhere(1, at10(0.03), at10(roughnessM)), `z0 ${roughnessM}`).toBeCloseTo(ratio, 4);
  });
  it('there and back is where it was, and falls as the land gets rougher', () => {
    const there = speedElsewhere(5, at10(0.03), at10(0.5));
    expect(speedElsewhere(there, at10(0.5), at10(0.03))).toBeCloseTo(5, 12);
    const speeds = ROUGHNESS_CLASSES.map(({ roughnessM }) => speedElsewhere(5, at10(0.03), at10(roughnessM)));
    expect(speeds).toEqual(speeds.toSorted((a, b) => b - a));
  });
  it('names the published class of a roughness length', () => {
    for (const each of ROUGHNESS_CLASSES) expect(roughnessClass(each.roughnessM)).toBe(each);
    expect(roughnessClass(0.2).name).toBe('rough');
  });
});

describe('how often Beaufort’s signs are seen', () => {
  const season = (sectors: ClimateSector[], calmShare: number) => ({ calmShare, sectors });
  it('k = 2, c = 7: hours from the closed form exp(-(v/7)^2), calms beside', () => {
    const sector = { fromDeg: 225, frequency: 0.9, meanSpeedMps: 7 * gamma(1.5), weibullK: 2 };
    const growingDay = new Uint8Array(365).fill(1, 90, 273);
    const one = season([sector], 0.1);
    const { growing, rest } = climateFacts({ heightM: 10, growing: one, rest: one }, growingDay);
    expect([growing.hours, rest.hours]).toEqual([183 * 24, 182 * 24]);
    expect(growing.sectors[0].weibullScaleMps).toBeCloseTo(7, 12);
    expect(growing.meanSpeedMps).toBeCloseTo(0.9 * 6.2036, 4);
    BEAUFORT_SCALE.forEach(({ fromMps, force }) => {
      const expected = 183 * 24 * (force === 0 ? 1 : 0.9 * Math.exp(-((fromMps / 7) ** 2)));
      expect(growing.hoursFromForce[force], `force ${force}`).toBeCloseTo(expected, 8);
    });
    expect(growing.sectors[0].forceShares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  });
});

describe('FAO-56 Eq. 47', () => {
  it('is the log profile over short grass (z0 = 0.123 * 0.12 m, displaced by 0.08 m): 0.748 to 1 %', () => {
    expect(Math.log((2 - 0.08) / (0.123 * 0.12)) / Math.log((10 - 0.08) / (0.123 * 0.12))).toBeCloseTo(
      speedAt2mOverGrass(1, 10),
      3,
    );
    expect(Math.abs(profileRatio(10, 2, 0.123 * 0.12) / speedAt2mOverGrass(1, 10) - 1)).toBeLessThan(0.01);
  });
  it('has the factor 0.748 from 10 m and gives 2.4 m/s from 3.2 m/s (Example 14)', () => {
    expect(speedAt2mOverGrass(1, 10)).toBeCloseTo(0.747951, 5);
    expect(speedAt2mOverGrass(3.2, 10)).toBeCloseTo(2.39, 2);
  });
  it.each([
    [2, 1],
    [3, 0.921],
    [5, 0.838],
    [10, 0.748],
  ])('has the published factor at %f m', (heightM, factor) => {
    expect(speedAt2mOverGrass(1, heightM)).toBeCloseTo(factor, 3);
  });
});

describe('Weibull distribution', () => {
  it('k = 2, c = 7: mean 6.204, density 0.12253 at 5 m/s', () => {
    expect(7 * gamma(1.5)).toBeCloseTo(6.204, 3);
    expect(weibullScale(6.204, 2)).toBeCloseTo(7, 3);
    expect(weibullDensity(5, 7, 2)).toBeCloseTo(0.12253, 5);
  });
  it('Gamma of 1/2, 1, 5 and 1.5 is as tabled', () => {
    expect(gamma(0.5)).toBeCloseTo(Math.sqrt(Math.PI), 12);
    expect(gamma(1)).toBeCloseTo(1, 12);
    expect(gamma(5)).toBeCloseTo(24, 9);
    expect(gamma(1.5)).toBeCloseTo(Math.sqrt(Math.PI) / 2, 12);
  });
  it('exceedance is exp(-(v/c)^k)', () => {
    expect(exceedanceShare(7, 7 * gamma(1.5), 2)).toBeCloseTo(Math.exp(-1), 12);
    expect(exceedanceShare(0, 5, 2)).toBe(1);
    expect(exceedanceShare(5, 0, 2)).toBe(0);
  });
  it('shape by moments finds k to 3 % for k = 1.5 to 3', () => {
    for (const k of [1.5, 2, 2.5, 3]) {
      const mean = gamma(1 + 1 / k);
      const deviation = Math.sqrt(gamma(1 + 2 / k) - mean * mean);
      expect(Math.abs(weibullShape(mean, deviation) / k - 1)).toBeLessThan(0.03);
    }
    expect(weibullShape(5, 50)).toBe(1);
    expect(weibullShape(5, 0.1)).toBe(4);
  });
});
