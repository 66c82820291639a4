/**
 * Photons that plants use (400 to 700 nm) in a megajoule of global solar radiation, mol MJ-1: 45 % of the energy
 * (commonly used; worldwide annual means 0.41 to 0.48) at 4.57 umol J-1 (Thimijan & Heins 1983, sun and sky), rounded.
 */
export const PHOTONS_MOL_PER_MJ = 2.06;
