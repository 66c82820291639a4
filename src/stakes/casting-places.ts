import { type Frame, type LocalXY, type LonLat, toLocal, toLonLat } from '../geo/frame.ts';
import { azimuthDeg } from '../geo/geodesic.ts';
import { gridScaleAt } from '../geo/grid-scale.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import { directionWord } from '../units/compass.ts';
import type { StakedFeature } from './staked-feature.ts';

/** A place of a thing whose shadow can be watched, counted along its line or outline from its first point. */
export interface CastingPlace {
  /** True metres; null: whichever corner reaches furthest at the time. */
  readonly alongM: number | null;
  readonly words: string;
}

export interface CastingLine {
  /** The first is the one to begin with. */
  readonly places: readonly CastingPlace[];
  readonly lineM: number;
  /** Where what casts there stands, local metres: both edges of a belt, one corner, or all corners for null. */
  readonly pointsAt: (alongM: number | null) => readonly LocalXY[];
  /** Middle of what is drawn: the stem of a tree. */
  readonly middle: LonLat;
}

/** Lengths along a line of local points, true metres, beginning with 0. */
function running(points: readonly LocalXY[], localPerM: number): number[] {
  const sums = [0];
  for (let i = 1; i < points.length; i++)
    sums.push(
      sums[i - 1] + Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]) / localPerM,
    );
  return sums;
}

/**
 * The places of a thing along its line or outline.
 * @param widthM of a belt; 0 for all else.
 */
export function castingPlaces(frame: Frame, feature: StakedFeature, widthM: number): CastingLine {
  const { geometry } = feature;
  if (geometry.type === 'Point') {
    const [lon, lat] = geometry.coordinates;
    const at = toLocal(frame, [lon, lat]);
    return {
      places: [{ alongM: null, words: 'its crown' }],
      lineM: 0,
      pointsAt: () => [at],
      middle: [lon, lat],
    };
  }
  const isLine = geometry.type === 'LineString';
  const points = ringToLocal(frame, isLine ? geometry.coordinates : geometry.coordinates[0]);
  const corners = isLine ? points : points.slice(0, -1);
  const middleXY: LocalXY = [
    corners.reduce((sum, [x]) => sum + x, 0) / corners.length,
    corners.reduce((sum, [, y]) => sum + y, 0) / corners.length,
  ];
  const middle = toLonLat(frame, middleXY);
  const localPerM = gridScaleAt(frame, middle);
  const at = running(points, localPerM);
  const lineM = at[at.length - 1];
  const named = corners.map((corner, i): CastingPlace => {
    const last = i === corners.length - 1;
    const what = !isLine ? 'corner' : i === 0 || last ? 'end' : 'bend';
    return {
      alongM: at[i],
      words: `its ${directionWord(azimuthDeg(middle, toLonLat(frame, corner)))} ${what}`,
    };
  });
  const places = isLine
    ? feature.properties.kind === 'belt'
      ? [
          { alongM: lineM / 2, words: 'its middle' },
          ...named.filter((_, i) => i === 0 || i === corners.length - 1),
        ]
      : named
    : [{ alongM: null, words: 'the corner that reaches furthest' }, ...named];
  return {
    places: told(places),
    lineM,
    middle,
    pointsAt: (alongM) => {
      if (alongM === null) return isLine ? edgesAt(points, at, lineM / 2, (widthM / 2) * localPerM) : corners;
      return edgesAt(points, at, alongM, (widthM / 2) * localPerM);
    },
  };
}

/** Places of the same name are counted. */
function told(places: readonly CastingPlace[]): CastingPlace[] {
  return places.map((place, i) => {
    const same = places.filter(({ words }) => words === place.words);
    if (same.length === 1) return place;
    const number = places.slice(0, i + 1).filter(({ words }) => words === place.words).length;
    return { ...place, words: `${place.words}, ${number}` };
  });
}

/** The point at a length along a line, or its two sides at half a width from it. */
function edgesAt(
  points: readonly LocalXY[],
  at: readonly number[],
  alongM: number,
  halfLocal: number,
): LocalXY[] {
  let leg = 1;
  while (leg < points.length - 1 && at[leg] < alongM) leg++;
  const [x0, y0] = points[leg - 1];
  const [x1, y1] = points[leg];
  const legM = at[leg] - at[leg - 1];
  const share = legM === 0 ? 0 : Math.min(1, Math.max(0, (alongM - at[leg - 1]) / legM));
  const [x, y] = [x0 + share * (x1 - x0), y0 + share * (y1 - y0)];
  if (halfLocal === 0) return [[x, y]];
  const length = Math.hypot(x1 - x0, y1 - y0) || 1;
  const [nx, ny] = [(-(y1 - y0) / length) * halfLocal, ((x1 - x0) / length) * halfLocal];
  return [
    [x + nx, y + ny],
    [x - nx, y - ny],
  ];
}
