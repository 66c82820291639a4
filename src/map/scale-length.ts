/** WGS 84: equatorial radius (m) and first eccentricity squared. */
const EQUATORIAL_RADIUS_M = 6_378_137;
const ECCENTRICITY_SQUARED = 0.006_694_379_990_141;
const FOOT_M = 0.3048;
const MILE_FEET = 5280;

/**
 * Ground metres that one screen pixel spans from west to east at a latitude, on the WGS 84 ellipsoid: the radius of
 * the parallel, N(φ) cos φ, times the longitude of one pixel. MapLibre's world is 512 px · 2^zoom around.
 */
export function metresPerPixel(latitudeDeg: number, zoom: number): number {
  const latitude = (latitudeDeg * Math.PI) / 180;
  const primeVertical = EQUATORIAL_RADIUS_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * Math.sin(latitude) ** 2);
  return (primeVertical * Math.cos(latitude) * 2 * Math.PI) / (512 * 2 ** zoom);
}

export interface ScaleLength {
  /** Length of the bar on the screen, pixels. */
  readonly lengthPx: number;
  /** "20 m", "50 ft", "½ mile" as a plain number: "0.5 mi". */
  readonly label: string;
  readonly lengthM: number;
}

/** The greatest of 1, 2, 5 × 10ⁿ that is not above `value`. */
function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const lead = value / power;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * power;
}
const plain = (value: number): string => String(Number(value.toPrecision(3)));

/** The longest round length that fits in `mostPx`, in metres or feet. */
export function scaleLength(metresPerPx: number, mostPx: number, units: 'metric' | 'imperial'): ScaleLength {
  const mostM = metresPerPx * mostPx;
  if (units === 'metric') {
    const lengthM = roundDown(mostM);
    const label = lengthM >= 1000 ? `${plain(lengthM / 1000)} km` : `${plain(lengthM)} m`;
    return { lengthPx: lengthM / metresPerPx, label, lengthM };
  }
  const mostFeet = mostM / FOOT_M;
  const inMiles = mostFeet >= MILE_FEET;
  const round = roundDown(inMiles ? mostFeet / MILE_FEET : mostFeet);
  const lengthM = round * (inMiles ? MILE_FEET * FOOT_M : FOOT_M);
  return { lengthPx: lengthM / metresPerPx, label: `${plain(round)} ${inMiles ? 'mi' : 'ft'}`, lengthM };
}

/** Turn of the map as CSS degrees for something that must keep pointing to true north. */
export const northTurnDeg = (bearingDeg: number): number => {
  const turn = -bearingDeg % 360;
  return turn === 0 ? 0 : turn;
};
