import { BadInputError } from '../units/bad-input.ts';

/** A roughness class of the land (Davenport, revised by Wieringa). */
export interface RoughnessClass {
  readonly name: string;
  /** What such land looks like, in our own words. */
  readonly words: string;
  /** Roughness length z0, metres. */
  readonly roughnessM: number;
}

/** Davenport-Wieringa roughness classes, as Stull's tables and the WMO codes give them. */
export const ROUGHNESS_CLASSES: readonly RoughnessClass[] = [
  { name: 'sea', words: 'open water', roughnessM: 0.0002 },
  { name: 'smooth', words: 'bare or close-mown flat land, snow', roughnessM: 0.005 },
  { name: 'open', words: 'open farmland, grass, hardly a hedge', roughnessM: 0.03 },
  { name: 'roughly open', words: 'farmland with low hedges, a tree here and there', roughnessM: 0.1 },
  { name: 'rough', words: 'hedges and scattered trees', roughnessM: 0.25 },
  { name: 'very rough', words: 'orchards, clumps of trees, scattered houses', roughnessM: 0.5 },
  { name: 'closed', words: 'woodland or village', roughnessM: 1 },
  { name: 'chaotic', words: 'town with tall buildings, wood with large gaps', roughnessM: 2 },
];

/** Roughness length of open farmland with few hedges, the land around a wind mast, metres. */
export const OPEN_ROUGHNESS_M = 0.03;

/** The class whose roughness length is nearest by ratio. */
export function roughnessClass(roughnessM: number): RoughnessClass {
  const away = (each: RoughnessClass) => Math.abs(Math.log(each.roughnessM / roughnessM));
  return ROUGHNESS_CLASSES.reduce((best, each) => (away(each) < away(best) ? each : best));
}

/**
 * Ratio of the wind speeds at two heights over the same ground, u(toM) / u(fromM), by the logarithmic profile
 * u(z) = (u* / kappa) ln(z / z0) for neutral air and no displacement height.
 */
export function profileRatio(fromM: number, toM: number, roughnessM: number = OPEN_ROUGHNESS_M): number {
  if (!(roughnessM > 0) || !(fromM > roughnessM) || !(toM > roughnessM)) {
    throw new BadInputError(
      `The wind profile needs heights above the roughness length of ${roughnessM} m; found ${fromM} m and ${toM} m.`,
    );
  }
  return Math.log(toM / roughnessM) / Math.log(fromM / roughnessM);
}

/**
 * Height at which the wind no longer feels the ground it blows over, but the country around: the mesowind at 60 m of
 * J. Wieringa 1986, "Roughness-dependent geographical interpolation of surface wind speed averages", Quarterly Journal
 * of the Royal Meteorological Society 112, 867-889.
 */
const BLENDING_HEIGHT_M = 60;

/**
 * Wind speed at another height and over other land: up the profile of the land it was measured over to the blending
 * height, and down the profile of the other. Over the same land this is the plain logarithmic profile. Left out: the
 * upper of Wieringa's two layers (both places lie in one country) and displacement heights; across a shore, where the
 * ground differs most, forecasts do not bear the method out (KNMI TR-381, 2019).
 */
export function speedElsewhere(
  speedMps: number,
  measured: { readonly heightM: number; readonly roughnessM: number },
  wanted: { readonly heightM: number; readonly roughnessM: number },
): number {
  if (measured.roughnessM === wanted.roughnessM) {
    return speedMps * profileRatio(measured.heightM, wanted.heightM, wanted.roughnessM);
  }
  const aloft = Math.max(BLENDING_HEIGHT_M, measured.heightM, wanted.heightM);
  return (
    speedMps *
    profileRatio(measured.heightM, aloft, measured.roughnessM) *
    profileRatio(aloft, wanted.heightM, wanted.roughnessM)
  );
}

/** FAO-56 Eq. 47: wind speed at 2 m from the speed at z metres over short grass, u2 = uz * 4.87 / ln(67.8 z - 5.42). */
export function speedAt2mOverGrass(speedMps: number, heightM: number): number {
  if (!(heightM >= 0.2)) {
    throw new BadInputError(`FAO-56 Eq. 47 needs a measuring height of 0.2 m or more; found ${heightM} m.`);
  }
  return (speedMps * 4.87) / Math.log(67.8 * heightM - 5.42);
}
