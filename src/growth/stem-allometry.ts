/**
 * Stem diameter from height and crown diameter: D = a (H * CD)^b * exp(s^2 / 2), D in cm at breast height, H and CD
 * in m (Jucker et al. 2017, Global Change Biology 23:177-190; coefficients as carried by the CRAN library itcSegment
 * 1.0, which sets s = 0 for every group but the global one).
 */
export interface StemAllometry {
  readonly a: number;
  readonly b: number;
  readonly sigma: number;
}

export const GLOBAL_TREES: StemAllometry = { a: 0.557, b: 0.809, sigma: 0.056 };
/** Palearctic temperate mixed forest, angiosperms. */
export const TEMPERATE_BROADLEAVES: StemAllometry = { a: 0.694, b: 0.73, sigma: 0 };
/** Palearctic temperate coniferous forest, gymnosperms. */
export const TEMPERATE_CONIFERS: StemAllometry = { a: 0.974, b: 0.748, sigma: 0 };

/** Stem diameter at breast height, cm. */
export function stemDiameterCm(group: StemAllometry, heightM: number, crownDiameterM: number): number {
  return group.a * (heightM * crownDiameterM) ** group.b * Math.exp(group.sigma ** 2 / 2);
}

/** The same solved for the crown's diameter, m. */
export function crownDiameterFromStemM(group: StemAllometry, heightM: number, stemCm: number): number {
  return (stemCm / (group.a * Math.exp(group.sigma ** 2 / 2))) ** (1 / group.b) / heightM;
}
