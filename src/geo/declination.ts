import geomagnetism from 'geomagnetism';
import type { LonLat } from './frame.ts';

/** Where a compass needle points, and what the figure rests on. */
export interface Declination {
  /** Angle from true north to magnetic north, clockwise (east) positive, degrees. */
  readonly declinationDeg: number;
  /** Name of the published model, such as WMM-2025. */
  readonly model: string;
  /** False when the date lies outside the model's five years: the figure is an extrapolation. */
  readonly withinModelYears: boolean;
}

/**
 * Magnetic declination from the World Magnetic Model (NOAA/NCEI and BGS) at a place and date.
 * The model leaves out local iron and rock; a compass read in a field is rarely better than half a degree anyway.
 * @param elevationM above sea level, metres: 1 km changes the figure by less than 0.01° in the temperate zones.
 */
export function declinationAt([lonDeg, latDeg]: LonLat, date: Date, elevationM = 0): Declination {
  const point = [latDeg, lonDeg, elevationM / 1000];
  const asked = modelWithin(date);
  const dated = asked ?? nearestModel(date);
  return {
    declinationDeg: dated.point(point).decl,
    model: dated.name || `WMM-${dated.epoch}`,
    withinModelYears: asked !== null,
  };
}

function modelWithin(date: Date): ReturnType<typeof geomagnetism.model> | null {
  try {
    return geomagnetism.model(date);
  } catch {
    return null; // the library throws for a date outside its models
  }
}

/**
 * The model at the edge of its years that lies nearest to the date. Running the yearly change on for decades
 * would be worse than keeping the last published value.
 */
function nearestModel(date: Date): ReturnType<typeof geomagnetism.model> {
  const earliest = new Date('2014-12-31T00:00:00Z');
  const latest = new Date('2029-11-12T00:00:00Z');
  return geomagnetism.model(date < earliest ? earliest : latest);
}

/** True azimuth (0 to below 360) of a bearing read from a compass, both degrees. */
export const magneticToTrueDeg = (magneticDeg: number, declinationDeg: number): number =>
  (((magneticDeg + declinationDeg) % 360) + 360) % 360;
