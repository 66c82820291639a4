import { describe, expect, it } from 'vitest';
import { heightFromAngle, heightFromShadow, heightFromStick } from '../../src/growth/measure-height.ts';
import { degToRad } from '../../src/units/angle.ts';
import { BadInputError } from '../../src/units/bad-input.ts';

describe('height from an angle', () => {
  it('adds the height of the eye on level ground', () => {
    const heightM = heightFromAngle({
      distanceM: 20,
      distanceIs: 'level',
      eyeHeightM: 1.6,
      topAngleRad: degToRad(45),
    });
    expect(heightM).toBeCloseTo(21.6, 9);
  });

  it('takes the foot of the tree from its own angle, whether above or below the eye', () => {
    const sight = (footDeg: number) =>
      heightFromAngle({
        distanceM: 20,
        distanceIs: 'level',
        eyeHeightM: 1.6,
        topAngleRad: degToRad(40),
        footAngleRad: degToRad(footDeg),
      });
    expect(sight(-10)).toBeCloseTo(20 * (Math.tan(degToRad(40)) + Math.tan(degToRad(10))), 9);
    expect(sight(10)).toBeCloseTo(20 * (Math.tan(degToRad(40)) - Math.tan(degToRad(10))), 9);
  });

  it('finds the level distance from a tape laid up the slope', () => {
    // Ground rising 1 in 4 towards the tree; the tree is 12 m tall and 20 m away on the level.
    const levelM = 20;
    const riseM = levelM / 4;
    const eyeM = 1.6;
    const heightM = heightFromAngle({
      distanceM: Math.hypot(levelM, riseM),
      distanceIs: 'along the ground',
      eyeHeightM: eyeM,
      topAngleRad: Math.atan2(riseM + 12 - eyeM, levelM),
      footAngleRad: Math.atan2(riseM - eyeM, levelM),
    });
    expect(heightM).toBeCloseTo(12, 9);
  });

  it('refuses angles and lengths that cannot be', () => {
    const sighting = { distanceM: 20, distanceIs: 'level', eyeHeightM: 1.6, topAngleRad: 0.5 } as const;
    expect(() => heightFromAngle({ ...sighting, distanceM: 0 })).toThrow(BadInputError);
    expect(() => heightFromAngle({ ...sighting, topAngleRad: degToRad(95) })).toThrow('found 95.0°');
    expect(() => heightFromAngle({ ...sighting, footAngleRad: 0.6 })).toThrow('larger than the angle');
    expect(() =>
      heightFromAngle({ ...sighting, distanceM: 1, distanceIs: 'along the ground', footAngleRad: -0.1 }),
    ).toThrow(BadInputError);
  });
});

describe('height from a stick', () => {
  it('goes by similar triangles', () => {
    expect(heightFromStick({ stickM: 0.6, eyeToStickM: 0.6, distanceM: 17 })).toBeCloseTo(17, 9);
    expect(heightFromStick({ stickM: 0.3, eyeToStickM: 0.6, distanceM: 17 })).toBeCloseTo(8.5, 9);
  });
});

describe('height from a shadow', () => {
  it('matches the lengths of the shadow of 10 m', () => {
    for (const [altitudeDeg, lengthM] of [
      [5, 114.3],
      [10, 56.71],
      [20, 27.47],
      [30, 17.32],
      [45, 10],
      [60, 5.77],
    ]) {
      // The lengths are rounded to a centimetre, which is 9 mm of height at 60 degrees.
      expect(Math.abs(heightFromShadow(lengthM, degToRad(altitudeDeg), 0) - 10)).toBeLessThan(0.01);
    }
  });

  it('allows for ground that rises or falls along the shadow', () => {
    const altitude = degToRad(30);
    for (const slope of [degToRad(8), degToRad(-8)]) {
      // Where the ray over a 10 m tree meets ground of that slope.
      const levelM = 10 / (Math.tan(altitude) + Math.tan(slope));
      expect(heightFromShadow(levelM / Math.cos(slope), altitude, slope)).toBeCloseTo(10, 9);
    }
  });

  it('refuses a sun below the horizon and ground steeper than the sun', () => {
    expect(() => heightFromShadow(10, degToRad(-2), 0)).toThrow('altitude of the sun');
    expect(() => heightFromShadow(10, degToRad(5), degToRad(-8))).toThrow('falls away');
  });
});
