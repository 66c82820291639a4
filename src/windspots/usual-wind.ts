import { azimuthDeg } from '../geo/geodesic.ts';
import { middleSpeedMps } from '../wind/beaufort.ts';
import type { WindClimate } from '../wind/shelter-types.ts';
import type { ShelteringFeature } from './sheltering-feature.ts';
import type { SpotWind } from './spot-plan.ts';

/** A wind in which two hand meters are read with ease: the middle of this force. */
const USUAL_FORCE = 4;

const cosOf = (a: number, b: number): number => Math.cos(((a - b) * Math.PI) / 180);

/**
 * The wind that is asked for first: square to the belt between its ends, from the side from which the site has more
 * of it, of Beaufort 4. @param climate null: from the right-hand side of the line.
 */
export function usualWind({ geometry }: ShelteringFeature, climate: WindClimate | null): SpotWind {
  const { coordinates } = geometry;
  const [[lon0, lat0], [lon1, lat1]] = [coordinates[0], coordinates[coordinates.length - 1]];
  const alongDeg = azimuthDeg([lon0, lat0], [lon1, lat1]);
  const sectors = climate ? [...climate.growing.sectors, ...climate.rest.sectors] : [];
  const runFrom = (fromDeg: number) =>
    sectors.reduce(
      (sum, sector) =>
        sum + sector.frequency * sector.meanSpeedMps * Math.max(0, cosOf(sector.fromDeg, fromDeg)),
      0,
    );
  const sides = [alongDeg + 90, alongDeg + 270].map((deg) => Math.round(deg) % 360);
  const fromDeg = runFrom(sides[1]) > runFrom(sides[0]) ? sides[1] : sides[0];
  return { fromDeg, speedMps: middleSpeedMps(USUAL_FORCE) };
}
