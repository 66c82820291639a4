import geodesic from 'geographiclib-geodesic';
import type { LonLat } from '../geo/frame.ts';
import { degToRad } from '../units/angle.ts';

/** Metres east and north of the plane's centre, along true directions there. */
export type PlaneM = readonly [number, number];

/**
 * The ground around a point as a true plane: geodesic distance and true azimuth from the centre (the azimuthal
 * equidistant projection of WGS 84). Over a kilometre its lengths are right to a few parts in a hundred million, where
 * those of a UTM grid are off by up to one in a thousand; so what is printed is laid out on it.
 */
export function groundPlane(centre: LonLat): (lonLat: LonLat) => PlaneM {
  const earth = geodesic.Geodesic.WGS84;
  return ([lon, lat]) => {
    const { s12 = 0, azi1 = 0 } = earth.Inverse(centre[1], centre[0], lat, lon);
    const azimuthRad = degToRad(azi1);
    return [s12 * Math.sin(azimuthRad), s12 * Math.cos(azimuthRad)];
  };
}
