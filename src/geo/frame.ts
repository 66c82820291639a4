import proj4 from 'proj4';
import { BadInputError } from '../units/bad-input.ts';

declare const frameBrand: unique symbol;

/** Longitude and latitude, WGS 84, degrees. */
export type LonLat = readonly [number, number];
/** x east and y north of the frame's origin, along the UTM grid, metres. */
export type LocalXY = readonly [number, number] & { readonly [frameBrand]?: 'local' };

/**
 * The site's frame: the WGS 84 UTM zone of its centre, with a whole-metre origin taken off so that
 * coordinates stay small.
 */
export interface Frame {
  /** 326zz north, 327zz south. */
  readonly epsg: number;
  readonly originEastingM: number;
  readonly originNorthingM: number;
  readonly centreLonLat: LonLat;
  /** Angle from true north to grid north at the centre, clockwise positive, radians. */
  readonly convergenceRad: number;
}

interface Converter {
  forward(lonLat: number[]): number[];
  inverse(eastNorth: number[]): number[];
}

// Building a projection costs far more than using it; what is kept is a pure function of the code.
const converters = new Map<number, Converter>();

function converterOf(epsg: number): Converter {
  const known = converters.get(epsg);
  if (known) return known;
  const zone = epsg % 100;
  const south = epsg >= 32700 ? ' +south' : '';
  const made = proj4(`+proj=utm +zone=${zone}${south} +datum=WGS84 +units=m +no_defs`);
  converters.set(epsg, made);
  return made;
}

/**
 * EPSG code of the WGS 84 UTM zone of a point. The wider zones of south-west Norway and Svalbard are
 * ignored: the plain six degrees serve a site as well.
 * @throws BadInputError beyond 84° N and 80° S, where UTM ends, or when the point is not on the globe.
 */
function utmEpsgAt([lonDeg, latDeg]: LonLat): number {
  if (!(Math.abs(lonDeg) <= 180) || !(Math.abs(latDeg) <= 90)) {
    throw new BadInputError(
      `The place ${lonDeg}, ${latDeg} is not on the globe: expected a longitude from -180 to 180 and a latitude from -90 to 90.`,
    );
  }
  if (latDeg > 84 || latDeg < -80) {
    throw new BadInputError(
      `The place lies at latitude ${latDeg}°: the map grid (UTM) reaches from 80° S to 84° N only.`,
    );
  }
  const zone = Math.min(60, Math.floor((lonDeg + 180) / 6) + 1);
  return (latDeg < 0 ? 32700 : 32600) + zone;
}

/** The frame whose centre, and origin to the nearest metre, is the given place. */
export function frameAt(lonLat: LonLat): Frame {
  const epsg = utmEpsgAt(lonLat);
  const [eastingM, northingM] = converterOf(epsg).forward([lonLat[0], lonLat[1]]);
  return {
    epsg,
    originEastingM: Math.round(eastingM),
    originNorthingM: Math.round(northingM),
    centreLonLat: [lonLat[0], lonLat[1]],
    convergenceRad: convergenceRadAt(epsg, lonLat),
  };
}

export function toLocal(frame: Frame, lonLat: LonLat): LocalXY {
  const [eastingM, northingM] = converterOf(frame.epsg).forward([lonLat[0], lonLat[1]]);
  return [eastingM - frame.originEastingM, northingM - frame.originNorthingM];
}

export function toLonLat(frame: Frame, [xM, yM]: LocalXY): LonLat {
  const [lonDeg, latDeg] = converterOf(frame.epsg).inverse([
    xM + frame.originEastingM,
    yM + frame.originNorthingM,
  ]);
  return [lonDeg, latDeg];
}

/**
 * Grid convergence of a UTM zone at a place: angle from true north to grid north, clockwise positive, radians.
 * Taken from the projection itself: the grid direction of a short step along the meridian, half of it to
 * the south and half to the north. Good to 1e-8 rad.
 */
export function convergenceRadAt(epsg: number, [lonDeg, latDeg]: LonLat): number {
  const stepDeg = 1e-3;
  const converter = converterOf(epsg);
  const south = converter.forward([lonDeg, latDeg - stepDeg]);
  const north = converter.forward([lonDeg, latDeg + stepDeg]);
  // Across the equator the southern zones' false northing stays the same, so the step needs no care there.
  return -Math.atan2(north[0] - south[0], north[1] - south[1]);
}
