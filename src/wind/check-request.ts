import { BadInputError } from '../units/bad-input.ts';
import type { ShelterRequest } from './shelter-types.ts';

/** Throws BadInputError where a height, speed or porosity is out of range, RangeError where arrays do not fit. */
export function checkShelterRequest({ scene, readingHeightM, galeMps }: ShelterRequest): void {
  if (!(readingHeightM >= 0)) {
    throw new BadInputError(`The reading height must be 0 m or more; found ${readingHeightM}.`);
  }
  if (!(galeMps > 0)) {
    throw new BadInputError(`The speed of a gale must be above 0 m/s; found ${galeMps}.`);
  }
  for (const barrier of scene.barriers) {
    for (const p of [barrier.porosityOn, barrier.porosityOff]) {
      if (!(p >= 0 && p <= 1)) {
        throw new BadInputError(`Optical porosity of thing ${barrier.thing} must be 0 to 1; found ${p}.`);
      }
    }
    if (barrier.heightM.length * 2 !== barrier.xyM.length) {
      throw new RangeError(
        `Thing ${barrier.thing} has ${barrier.xyM.length / 2} vertices and ${barrier.heightM.length} heights.`,
      );
    }
    if (!barrier.heightM.every((heightM) => heightM >= 0)) {
      throw new BadInputError(`Heights of thing ${barrier.thing} must be 0 m or more.`);
    }
  }
}
