import { BEAUFORT_SCALE, beaufortForce, middleSpeedMps } from '../wind/beaufort.ts';

/** Two hand meters are read with ease from a gentle to a strong breeze. */
const READABLE_FORCES = BEAUFORT_SCALE.filter(({ force }) => force >= 3 && force <= 6);

/** Winds that are offered: the middle of each force, with its sign. */
export const READABLE_WINDS = READABLE_FORCES.map(({ force, name, landSign }) => ({
  force,
  speedMps: middleSpeedMps(force),
  words: `Beaufort ${force}, ${name}`,
  sign: landSign,
}));

/** The force of a wind, within those that are offered. */
export const readableForce = (speedMps: number): number =>
  Math.min(
    READABLE_FORCES[READABLE_FORCES.length - 1].force,
    Math.max(READABLE_FORCES[0].force, beaufortForce(speedMps).force),
  );
