import type { Frame } from '../geo/frame.ts';
import { polygonAreaM2 } from '../geo/geodesic.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import type { GridSpec } from '../numeric/grid.ts';
import { featuresOfKind } from '../site/chosen-features.ts';
import type { FeatureOf, SiteDocument, SiteFeature } from '../site/document.ts';

/** Geodesic area of a drawn polygon, m2. */
export const areaOfFeatureM2 = (feature: SiteFeature): number =>
  feature.geometry.type === 'Polygon'
    ? polygonAreaM2(feature.geometry.coordinates.map((ring) => ring.map(([lon, lat]) => [lon, lat] as const)))
    : 0;

export const fieldsOf = (document: SiteDocument): FeatureOf<'field'>[] =>
  featuresOfKind(document.features, 'field');

export interface CellFigures {
  /** Cells with a value. */
  readonly count: number;
  readonly mean: number;
  /** Share of the cells at or above each threshold. */
  readonly shareFrom: (threshold: number) => number;
  /** Mean of what is worked out from each cell's value. */
  readonly meanOf: (work: (value: number) => number) => number;
}

/** Figures over the cells whose centres lie in a polygon; null when none has a value. */
export function figuresInside(
  grid: GridSpec,
  values: Float32Array,
  frame: Frame,
  feature: SiteFeature,
): CellFigures | null {
  if (feature.geometry.type !== 'Polygon') return null;
  const mask = cellsInside(
    grid,
    feature.geometry.coordinates.map((ring) => ringToLocal(frame, ring)),
  );
  const inside: number[] = [];
  let sum = 0;
  for (let cell = 0; cell < mask.length; cell++) {
    if (mask[cell] === 0 || Number.isNaN(values[cell])) continue;
    inside.push(values[cell]);
    sum += values[cell];
  }
  if (inside.length === 0) return null;
  return {
    count: inside.length,
    mean: sum / inside.length,
    shareFrom: (threshold) => inside.filter((value) => value >= threshold).length / inside.length,
    meanOf: (work) => inside.reduce((all, value) => all + work(value), 0) / inside.length,
  };
}
