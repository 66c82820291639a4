import { BadInputError } from '../units/bad-input.ts';

/** A tree's height from the ground, without climbing it. Lengths in metres, angles in radians above the horizontal. */

function requirePositive(name: string, valueM: number): void {
  if (!(valueM > 0 && Number.isFinite(valueM))) {
    throw new BadInputError(`${name} must be a length above 0 m; found ${valueM}.`);
  }
}

function requireAngle(name: string, angleRad: number, leastRad: number): void {
  if (!(angleRad > leastRad && angleRad < Math.PI / 2)) {
    const degrees = ((angleRad * 180) / Math.PI).toFixed(1);
    const least = ((leastRad * 180) / Math.PI).toFixed(0);
    throw new BadInputError(`${name} must lie between ${least}° and 90°; found ${degrees}°.`);
  }
}

export interface AngleSighting {
  /** From the eye to the stem: level, or taped along the ground from the feet to the stem's foot. */
  readonly distanceM: number;
  readonly distanceIs: 'level' | 'along the ground';
  readonly eyeHeightM: number;
  readonly topAngleRad: number;
  /** Angle down (negative) or up to the stem's foot; absent on level ground. */
  readonly footAngleRad?: number;
}

/**
 * Height by the tangent method: H = d (tan top - tan foot), d the level distance. Where the tape lay on the slope,
 * d follows from the triangle of feet, eye and stem foot.
 * @throws BadInputError where the lengths and angles cannot belong together.
 */
export function heightFromAngle(sighting: AngleSighting): number {
  const { distanceM, eyeHeightM, topAngleRad, footAngleRad } = sighting;
  requirePositive('The distance to the tree', distanceM);
  requirePositive('The height of the eye', eyeHeightM);
  requireAngle('The angle to the top', topAngleRad, -Math.PI / 2);
  if (footAngleRad === undefined) return topAboveFoot(distanceM * Math.tan(topAngleRad) + eyeHeightM);
  requireAngle('The angle to the foot', footAngleRad, -Math.PI / 2);
  const footTan = Math.tan(footAngleRad);
  let levelM = distanceM;
  if (sighting.distanceIs === 'along the ground') {
    // distance^2 = level^2 + rise^2, with the foot's rise above the feet = eye + level * tan(foot).
    const reach = (1 + footTan ** 2) * distanceM ** 2 - eyeHeightM ** 2;
    if (reach <= 0) {
      throw new BadInputError(
        `The distance to the tree must be longer than the eye is high; found ${distanceM} m.`,
      );
    }
    levelM = (Math.sqrt(reach) - eyeHeightM * footTan) / (1 + footTan ** 2);
  }
  return topAboveFoot(levelM * (Math.tan(topAngleRad) - footTan));
}

function topAboveFoot(heightM: number): number {
  if (heightM > 0) return heightM;
  throw new BadInputError('The angle to the top must be larger than the angle to the foot.');
}

/** Height by similar triangles: a stick held upright at arm's length just covers the tree from foot to top. */
export function heightFromStick(sighting: {
  readonly stickM: number;
  readonly eyeToStickM: number;
  readonly distanceM: number;
}): number {
  requirePositive('The length of the stick', sighting.stickM);
  requirePositive('The distance from eye to stick', sighting.eyeToStickM);
  requirePositive('The distance to the tree', sighting.distanceM);
  return (sighting.distanceM * sighting.stickM) / sighting.eyeToStickM;
}

/**
 * Height from the length of a shadow: H = L (cos s tan a + sin s).
 * @param shadowLengthM from the stem's foot to the tip of the shadow, taped along the ground.
 * @param sunAltitudeRad of the sun's centre.
 * @param groundSlopeRad rise (positive) or fall of the ground from the tree towards the shadow's tip.
 */
export function heightFromShadow(
  shadowLengthM: number,
  sunAltitudeRad: number,
  groundSlopeRad: number,
): number {
  requirePositive('The length of the shadow', shadowLengthM);
  requireAngle('The altitude of the sun', sunAltitudeRad, 0);
  requireAngle('The slope of the ground along the shadow', groundSlopeRad, -Math.PI / 2);
  const heightM =
    shadowLengthM * (Math.cos(groundSlopeRad) * Math.tan(sunAltitudeRad) + Math.sin(groundSlopeRad));
  if (heightM > 0) return heightM;
  throw new BadInputError(
    'The ground falls away faster than the sun stands high: the shadow cannot end there.',
  );
}
