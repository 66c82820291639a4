/** Water vapour in the air after FAO-56 (Allen, Pereira, Raes & Smith 1998; equation numbers below). Pressures in kPa. */

/** Vapour pressure at saturation (eq. 11). */
export const saturationKPa = (temperatureC: number): number =>
  0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3));

/** Slope of the saturation curve, kPa per degree (eq. 13). */
export const saturationSlopeKPa = (temperatureC: number): number =>
  (4098 * saturationKPa(temperatureC)) / (temperatureC + 237.3) ** 2;

/** Dew point of air at a relative humidity in percent: eq. 11 turned round. */
export function dewPointC(temperatureC: number, humidityPercent: number): number {
  const logRatio = Math.log((saturationKPa(temperatureC) * humidityPercent) / 100 / 0.6108);
  return (237.3 * logRatio) / (17.27 - logRatio);
}

/** Pressure of the air at an elevation (eq. 7). */
export const pressureKPa = (elevationM: number): number =>
  101.3 * ((293 - 0.0065 * elevationM) / 293) ** 5.26;

/** Psychrometric constant, kPa per degree (eq. 8). */
export const psychrometricKPa = (elevationM: number): number => 0.000665 * pressureKPa(elevationM);
