import { wetnessIndex } from '../geo/drainage.ts';
import type { Frame, LocalXY, LonLat } from '../geo/frame.ts';
import { polygonAreaM2 } from '../geo/geodesic.ts';
import { lieOfGround } from '../geo/lie-of-ground.ts';
import { localBoxOf, widenedBox } from '../geo/local-box.ts';
import { exposureOf } from '../geo/mean-exposure.ts';
import { cellsInside, forEachInside, ringToLocal } from '../geo/rasterise.ts';
import { slopeAndAspect } from '../geo/terrain.ts';
import { croppedGrid, type Grid, type GridSpec } from '../numeric/grid.ts';
import { chosenFeatures, isOfKind } from '../site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';
import { distanceToLineM, lineEnters } from '../site/plane-geometry.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { GroundFigures } from './choose-types.ts';
import type { ColdAir } from './cold-air.ts';
import { coldFigures } from './cold-figures.ts';

/** Words by which water is known where it is not said whether it can be drawn there. */
const WATER = /\b(water|well|spring|pond|stream|brook|ditch|tank|tap|hydrant)\b/i;
/** Ground beyond the field that the slope of its edge cells is taken with, m. */
const MARGIN_M = 20;

/** How the ground of a field lies. @param wetness of the cold air's grid. */
export function groundFigures(
  document: SiteDocument,
  field: FieldFeature,
  frame: Frame,
  ground: Grid,
  cold: ColdAir,
  wetness: Float32Array,
  layout: string | null,
): GroundFigures {
  const outline = field.geometry.coordinates.map((ring) => ring.map(([lon, lat]): LonLat => [lon, lat]));
  const rings = outline.map((ring) => ringToLocal(frame, ring));
  // A ring has at least four places.
  const near = croppedGrid(ground, widenedBox(localBoxOf(frame, outline[0])!, MARGIN_M));
  const mask = cellsInside(near, rings);
  const lie = lieOfGround(near, slopeAndAspect(near, frame.convergenceRad), rings);
  const features = chosenFeatures(document, layout);
  return {
    areaM2: polygonAreaM2(outline),
    slopeDeg: lie?.slopeDeg ?? Number.NaN,
    aspectDeg: lie?.aspectDeg ?? null,
    horizonSumDeg: exposureOf(ground, near, mask, frame.convergenceRad),
    wetness: meanInside(wetness, cold.grid, rings),
    cold: coldFigures(cold, rings),
    toAccessM: nearestM(
      rings,
      features.filter((one) => isOfKind(one, 'path') && !isWater(one)),
      frame,
    ),
    toWaterM: nearestM(rings, features.filter(isWater), frame),
  };
}

/** Topographic wetness on the cold air's grid. */
export function wetnessOf({ grid, upslopeM2, elevationM }: ColdAir): Float32Array {
  const ground = { ...grid, values: elevationM };
  return wetnessIndex(ground, { upslopeM2 }, slopeAndAspect(ground, 0).slopeDeg);
}

function meanInside(values: Float32Array, grid: GridSpec, rings: readonly (readonly LocalXY[])[]): number {
  let [sum, count] = [0, 0];
  forEachInside(grid, rings, (cell) => {
    if (Number.isNaN(values[cell])) return;
    sum += values[cell];
    count++;
  });
  return count > 0 ? sum / count : Number.NaN;
}

const isWater = ({ properties }: SiteFeature): boolean => {
  if (properties.kind !== 'service' && properties.kind !== 'keepOut' && properties.kind !== 'path')
    return false;
  const { name, reason, water } = properties;
  return water ? water === 'yes' : WATER.test(`${name ?? ''} ${reason ?? ''}`);
};

/** From a field's outline to the nearest of some lines and areas, m; 0 where one enters it; null for none. */
function nearestM(
  rings: readonly (readonly LocalXY[])[],
  features: readonly SiteFeature[],
  frame: Frame,
): number | null {
  let nearest = Number.POSITIVE_INFINITY;
  for (const { geometry } of features) {
    const lines =
      geometry.type === 'LineString'
        ? [geometry.coordinates]
        : geometry.type === 'Polygon'
          ? geometry.coordinates
          : [];
    for (const coordinates of lines) {
      const line = ringToLocal(frame, coordinates);
      if (lineEnters(line, rings)) return 0;
      for (const ring of rings)
        nearest = Math.min(
          nearest,
          ...ring.map((xy) => distanceToLineM(xy, line)),
          ...line.map((xy) => distanceToLineM(xy, ring)),
        );
    }
  }
  return Number.isFinite(nearest) ? nearest : null;
}
