import type { LonLat } from '../../geo/frame.ts';
import { azimuthDeg, destination, distanceM, lineLengthM, polygonAreaM2 } from '../../geo/geodesic.ts';
import { selfCrossing } from '../../geo/polygon.ts';

/** A shape being drawn, by pointer or keyboard alike: the corners placed so far and where the cross is. */
export interface Sketch {
  readonly shape: 'Point' | 'LineString' | 'Polygon';
  readonly corners: readonly LonLat[];
  readonly cross: LonLat;
}

export type SketchStep =
  | { readonly do: 'move'; readonly to: LonLat }
  /** Places a corner at the cross; on the last corner (or the first of an area) it finishes instead. */
  | { readonly do: 'place'; readonly reachM: number }
  | { readonly do: 'take-back' }
  | { readonly do: 'finish' };

export type DrawnShape =
  | { readonly type: 'Point'; readonly coordinates: [number, number] }
  | { readonly type: 'LineString'; readonly coordinates: [number, number][] }
  | { readonly type: 'Polygon'; readonly coordinates: [number, number][][] };

/** What a step led to. A refusal is a sentence for the person; the sketch then stays as it was. */
export interface SketchOutcome {
  readonly sketch: Sketch;
  readonly finished: DrawnShape | null;
  readonly refusal: string | null;
}

export const emptySketch = (shape: Sketch['shape'], cross: LonLat): Sketch => ({
  shape,
  corners: [],
  cross,
});

/** A cross moved on by arrow keys. `upDeg` is the true azimuth of the top of the map, `turnDeg` the key's: 0 up, 90 right. */
export const crossMoved = (cross: LonLat, upDeg: number, turnDeg: number, lengthM: number): LonLat =>
  destination(cross, upDeg + turnDeg, lengthM);

/** One step of drawing; pure. */
export function stepSketch(sketch: Sketch, step: SketchStep): SketchOutcome {
  const stays = (next: Sketch, refusal: string | null = null): SketchOutcome => ({
    sketch: next,
    finished: null,
    refusal,
  });
  switch (step.do) {
    case 'move':
      return stays({ ...sketch, cross: step.to });
    case 'take-back':
      return stays({ ...sketch, corners: sketch.corners.slice(0, -1) });
    case 'finish':
      return finish(sketch);
    case 'place': {
      if (sketch.shape === 'Point') return finish({ ...sketch, corners: [sketch.cross] });
      const { corners, cross } = sketch;
      const last = corners.at(-1);
      if (last && distanceM(last, cross) <= step.reachM) return finish(sketch);
      const closes =
        sketch.shape === 'Polygon' && corners.length >= 3 && distanceM(corners[0], cross) <= step.reachM;
      if (closes) return finish(sketch);
      return stays({ ...sketch, corners: [...corners, cross] });
    }
  }
}

const position = ([lon, lat]: LonLat): [number, number] => [lon, lat];

function finish(sketch: Sketch): SketchOutcome {
  const { shape, corners } = sketch;
  const refused = (refusal: string): SketchOutcome => ({ sketch, finished: null, refusal });
  const done = (finished: DrawnShape): SketchOutcome => ({
    sketch: { ...sketch, corners: [] },
    finished,
    refusal: null,
  });
  if (shape === 'Point') {
    if (corners.length < 1) return refused('Choose the place first.');
    return done({ type: 'Point', coordinates: position(corners[0]) });
  }
  if (shape === 'LineString') {
    if (corners.length < 2) return refused('A line needs two points or more.');
    return done({ type: 'LineString', coordinates: corners.map(position) });
  }
  if (corners.length < 3) return refused('An area needs three corners or more.');
  const ring = [...corners, corners[0]].map(position);
  if (selfCrossing([ring]))
    return refused('The outline crosses itself. Take the last corner back and go round.');
  return done({ type: 'Polygon', coordinates: [ring] });
}

/** What a person wants to know while drawing, with the cross as the next corner. Metres, degrees from true north. */
export interface SketchMeasures {
  readonly fromLastM: number | null;
  readonly bearingDeg: number | null;
  readonly fromStartM: number | null;
  /** Between the last two corners placed. */
  readonly lastSideM: number | null;
  /** Along the line up to the cross. */
  readonly lengthM: number | null;
  readonly areaM2: number | null;
}

const NO_MEASURES: SketchMeasures = {
  fromLastM: null,
  bearingDeg: null,
  fromStartM: null,
  lastSideM: null,
  lengthM: null,
  areaM2: null,
};

export function sketchMeasures({ shape, corners, cross }: Sketch): SketchMeasures {
  const last = corners.at(-1);
  if (!last) return NO_MEASURES;
  const fromLastM = distanceM(last, cross);
  const withCross = fromLastM > 0 ? [...corners, cross] : corners;
  return {
    fromLastM,
    bearingDeg: fromLastM > 0.005 ? azimuthDeg(last, cross) : null,
    fromStartM: distanceM(corners[0], cross),
    lastSideM: corners.length >= 2 ? distanceM(corners[corners.length - 2], last) : null,
    lengthM: lineLengthM(withCross),
    areaM2: shape === 'Polygon' && withCross.length >= 3 ? polygonAreaM2([withCross]) : null,
  };
}

/** The sketch as the map draws it: the line or area up to the cross, and its corners. */
export function sketchFeatures({ shape, corners, cross }: Sketch): GeoJSON.FeatureCollection {
  const line = [...corners, cross].map(position);
  const features: GeoJSON.Feature[] = corners.map((corner) => ({
    type: 'Feature',
    properties: {},
    geometry: { type: 'Point', coordinates: position(corner) },
  }));
  if (line.length >= 2) {
    const geometry: GeoJSON.Geometry =
      shape === 'Polygon' && line.length >= 3
        ? { type: 'Polygon', coordinates: [[...line, line[0]]] }
        : { type: 'LineString', coordinates: line };
    features.unshift({ type: 'Feature', properties: {}, geometry });
  }
  return { type: 'FeatureCollection', features };
}
