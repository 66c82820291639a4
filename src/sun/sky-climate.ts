/** Hourly radiation of one year, from a weather file. Each record is the mean over its hour. */
export interface HourlyRadiation {
  /** UTC milliseconds of the middle of each hour, placed in the year that is computed. */
  readonly midHourMs: Float64Array;
  /** Global and diffuse irradiation on the horizontal, W m-2. */
  readonly globalWm2: Float32Array;
  readonly diffuseWm2: Float32Array;
}

/** What the sky gives: measured hours, or monthly sunshine shares n/N (Angstrom mix of a clear and an overcast sky). */
export interface SkyClimate {
  readonly sunshineShareByMonth: Float32Array;
  readonly hourly: HourlyRadiation | null;
  /** How the diffuse light is spread over the sky. */
  readonly diffuseSky: 'isotropic' | 'cie-overcast';
}
