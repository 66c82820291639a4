/**
 * How much light a body of foliage lets through. Beer-Lambert: transmittance = exp(-G * a * path), with a the
 * leaf-area density (m2 of leaf in a m3 of crown). G = 0.5 is the projection of leaves whose angles are spread like
 * the faces of a sphere (Campbell & Norman 1998, ch. 15), the same from every direction.
 */
import { BadInputError } from '../units/bad-input.ts';
import type { CrownForm } from './crown-set.ts';
import { crownPathM } from './path-length.ts';

/** Mean projection of a unit leaf area, spherical leaf angles. */
const LEAF_PROJECTION = 0.5;
/** For light, no foliage is denser than this share of daylight through its width; what is solid is a wall. */
const MIN_POROSITY_FOR_LIGHT = 0.01;

/** Optical depth per metre (1/m) of foliage whose optical porosity across `widthM` metres is known: porosity = exp(-depth * width). */
export function depthPerMetreFromPorosity(porosity: number, widthM: number): number {
  return -Math.log(Math.min(1, Math.max(MIN_POROSITY_FOR_LIGHT, porosity))) / widthM;
}

/** Optical depth per metre (1/m) of foliage of a leaf-area density (m2 m-3). */
export const depthPerMetreFromDensity = (leafAreaDensityM2M3: number): number =>
  LEAF_PROJECTION * leafAreaDensityM2M3;

const VIEW_ALTITUDE_RAD = Math.PI / 4;
const RAYS_ACROSS = 72;

/** Path lengths (m) of parallel rays, evenly spread over the silhouette of a crown seen at 45 degrees. */
function silhouettePathsM(form: CrownForm, heightM: number, baseM: number, radiusM: number): Float64Array {
  const uy = Math.cos(VIEW_ALTITUDE_RAD);
  const uz = Math.sin(VIEW_ALTITUDE_RAD);
  const lengthM = heightM - baseM;
  const middleM = (heightM + baseM) / 2;
  // The silhouette lies within this distance of the axis of view, up and down.
  const reachM = radiusM * uz + (lengthM / 2) * uy;
  const backM = radiusM + lengthM;
  const paths: number[] = [];
  for (let i = 0; i < RAYS_ACROSS; i++) {
    const x = radiusM * ((2 * (i + 0.5)) / RAYS_ACROSS - 1);
    for (let j = 0; j < RAYS_ACROSS; j++) {
      const v = reachM * ((2 * (j + 0.5)) / RAYS_ACROSS - 1);
      const oy = -v * uz - backM * uy;
      const oz = middleM + v * uy - backM * uz;
      const path = crownPathM(form, x, oy, oz, 0, uy, uz, baseM, heightM, radiusM);
      if (path > 0) paths.push(path);
    }
  }
  return Float64Array.from(paths);
}

/** Mean transmittance over the silhouette of a crown seen at 45 degrees altitude, 0 to 1. */
export function silhouetteTransmittance(
  form: CrownForm,
  heightM: number,
  baseM: number,
  radiusM: number,
  leafAreaDensityM2M3: number,
): number {
  return meanTransmittance(
    silhouettePathsM(form, heightM, baseM, radiusM),
    depthPerMetreFromDensity(leafAreaDensityM2M3),
  );
}

function meanTransmittance(pathsM: Float64Array, depthPerM: number): number {
  let sum = 0;
  for (let i = 0; i < pathsM.length; i++) sum += Math.exp(-depthPerM * pathsM[i]);
  return sum / pathsM.length;
}

/**
 * Leaf-area density (m2 m-3) at which the mean transmittance over the silhouette of a crown, seen at 45 degrees,
 * equals `transmittance`. The mean over the silhouette, and not the transmittance of the mean path, is what the
 * published figures for whole crowns are.
 * @throws BadInputError when the crown has no volume or the transmittance is not between 0 and 1.
 */
export function leafAreaDensityForTransmittance(
  form: CrownForm,
  heightM: number,
  baseM: number,
  radiusM: number,
  transmittance: number,
): number {
  if (!(heightM > baseM && radiusM > 0))
    throw new BadInputError(
      `A crown from ${baseM} m to ${heightM} m with radius ${radiusM} m has no volume; expected its top above its base and a radius above 0.`,
    );
  if (!(transmittance > 0 && transmittance <= 1))
    throw new BadInputError(
      `A crown's transmittance is ${transmittance}; expected a share above 0 and up to 1.`,
    );
  const paths = silhouettePathsM(form, heightM, baseM, radiusM);
  let low = 0;
  let high = 1;
  while (meanTransmittance(paths, depthPerMetreFromDensity(high)) > transmittance && high < 1e6) high *= 2;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (meanTransmittance(paths, depthPerMetreFromDensity(middle)) > transmittance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
