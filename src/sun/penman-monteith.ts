import { extraterrestrialMJ } from './daily-radiation.ts';
import { psychrometricKPa, saturationKPa, saturationSlopeKPa } from './vapour.ts';

/**
 * Reference evaporation of a day after FAO-56 Penman-Monteith (Allen, Pereira, Raes & Smith 1998; equation numbers
 * below): water that a short, well-watered grass gives off. Radiation in MJ m-2 d-1, evaporation in mm a day.
 */

const STEFAN_BOLTZMANN_MJ = 4.903e-9;
const KELVIN = 273.16;
/** Reflected by the reference grass (eq. 38). */
const ALBEDO = 0.23;
/** Radiation in mm of water (eq. 20). */
const MM_A_MJ = 0.408;

/** A day's weather. */
export interface EvaporationDay {
  /** 1 = 1 January. */
  readonly dayOfYear: number;
  readonly leastC: number;
  readonly mostC: number;
  /** Actual vapour pressure, kPa. */
  readonly vapourKPa: number;
  /** On the horizontal. */
  readonly globalMJ: number;
}

export interface EvaporationPlace {
  readonly latRad: number;
  readonly elevationM: number;
}

/** Net radiation of the reference grass (eq. 37 to 40). */
export function netRadiationMJ(day: EvaporationDay, { latRad, elevationM }: EvaporationPlace): number {
  const clearMJ = (0.75 + 2e-5 * elevationM) * extraterrestrialMJ(latRad, day.dayOfYear);
  // Rs / Rso says how clear the sky is; it is 1 at most, and in polar night nothing is known of it.
  const clear = clearMJ > 0 ? Math.min(1, day.globalMJ / clearMJ) : 0.5;
  const radiator = ((day.mostC + KELVIN) ** 4 + (day.leastC + KELVIN) ** 4) / 2;
  const longwave =
    STEFAN_BOLTZMANN_MJ * radiator * (0.34 - 0.14 * Math.sqrt(day.vapourKPa)) * (1.35 * clear - 0.35);
  return (1 - ALBEDO) * day.globalMJ - longwave;
}

/**
 * A day's evaporation as a function of the wind u2 (m/s at 2 m): (radiation + drying u2) / (still + stirred u2), in mm.
 * Eq. 6 with its four terms gathered.
 */
export interface WindTerms {
  readonly radiation: number;
  readonly drying: number;
  readonly still: number;
  readonly stirred: number;
}

/** @param groundHeatMJ G, taken as 0 for a day (eq. 42). */
export function windTerms(day: EvaporationDay, place: EvaporationPlace, groundHeatMJ = 0): WindTerms {
  const meanC = (day.leastC + day.mostC) / 2;
  const slope = saturationSlopeKPa(meanC);
  const gamma = psychrometricKPa(place.elevationM);
  const deficitKPa = (saturationKPa(day.leastC) + saturationKPa(day.mostC)) / 2 - day.vapourKPa;
  return {
    radiation: MM_A_MJ * slope * (netRadiationMJ(day, place) - groundHeatMJ),
    drying: ((gamma * 900) / (meanC + 273)) * deficitKPa,
    still: slope + gamma,
    stirred: 0.34 * gamma,
  };
}

/** Reference evaporation at a wind, mm a day (eq. 6). */
export const evaporationMm = ({ radiation, drying, still, stirred }: WindTerms, windMps: number): number =>
  (radiation + drying * windMps) / (still + stirred * windMps);

/**
 * Whether more wind dries more that day. The derivative of (r + d u) / (s + t u) is (d s - r t) / (s + t u)^2: its sign
 * does not hang on u. So wind dries exactly when 900 / (T + 273) (es - ea) (slope + gamma) > 0.34 * 0.408 slope (Rn - G);
 * in air so humid, or under so much sun, that this fails, wind cools more than it dries, and shelter costs water.
 */
export const windDries = ({ radiation, drying, still, stirred }: WindTerms): boolean =>
  drying * still > radiation * stirred;
