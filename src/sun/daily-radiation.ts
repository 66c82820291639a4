/**
 * Radiation of a day on level ground after FAO-56 (Allen, Pereira, Raes & Smith 1998, Crop evapotranspiration,
 * equation numbers below), for energy only: its declination is a degree off at times and serves no shadow.
 */

/** Solar constant, MJ m-2 min-1 (FAO-56, eq. 21). */
const SOLAR_CONSTANT_MJ_M2_MIN = 0.082;

/** Inverse relative distance to the sun (eq. 23); dayOfYear 1 = 1 January. */
export const inverseRelativeDistance = (dayOfYear: number): number =>
  1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365);

/** Solar declination, radians (eq. 24). */
export const fao56DeclinationRad = (dayOfYear: number): number =>
  0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);

/** Sunset hour angle, radians (eq. 25); 0 in polar night, pi in polar day. */
export function sunsetHourAngleRad(latRad: number, declinationRad: number): number {
  return Math.acos(Math.min(1, Math.max(-1, -Math.tan(latRad) * Math.tan(declinationRad))));
}

/** Radiation above the air on a horizontal plane, MJ m-2 d-1 (eq. 21). */
export function extraterrestrialMJ(latRad: number, dayOfYear: number): number {
  const declination = fao56DeclinationRad(dayOfYear);
  const sunset = sunsetHourAngleRad(latRad, declination);
  return (
    ((24 * 60) / Math.PI) *
    SOLAR_CONSTANT_MJ_M2_MIN *
    inverseRelativeDistance(dayOfYear) *
    (sunset * Math.sin(latRad) * Math.sin(declination) +
      Math.cos(latRad) * Math.cos(declination) * Math.sin(sunset))
  );
}

/** Share of Ra that reaches the ground under a clear and under an overcast sky (eq. 35 with n/N 1 and 0). */
export const CLEAR_SKY_SHARE = 0.75;
export const OVERCAST_SKY_SHARE = 0.25;

/** Solar radiation at the ground, MJ m-2 d-1 (eq. 35); sunshineShare is n/N. */
export const globalMJ = (extraterrestrial: number, sunshineShare: number): number =>
  (OVERCAST_SKY_SHARE + (CLEAR_SKY_SHARE - OVERCAST_SKY_SHARE) * sunshineShare) * extraterrestrial;
