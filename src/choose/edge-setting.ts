import type { Frame } from '../geo/frame.ts';
import { localBoxOf, widenedBox } from '../geo/local-box.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import {
  boxOfGrid,
  cellCentreX,
  cellCentreY,
  cellCount,
  type GridSpec,
  gridCovering,
} from '../numeric/grid.ts';
import type { SceneOptions } from '../scene/options.ts';
import { beltOrBlockAtYear, wallAtYear } from '../scene/stand-at-year.ts';
import { isOfKind } from '../site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { DOWNWIND_REACH_H } from '../wind/weps.ts';
import { besideEdge, type EdgeShape } from './edge-cells.ts';
import type { EdgeFeature } from './edge-types.ts';

export const isEdge = (feature: SiteFeature): feature is EdgeFeature =>
  isOfKind(feature, 'belt') || isOfKind(feature, 'block') || isOfKind(feature, 'wall');

/** How an edge stands in a year. @returns height and width in m; null: it does not. */
export function edgeStand(
  document: SiteDocument,
  edge: EdgeFeature,
  moment: SceneOptions,
): { readonly heightM: number; readonly widthM: number } | null {
  if (moment.felled?.ids.includes(edge.id) && moment.year >= moment.felled.fromYear) return null;
  return isOfKind(edge, 'wall')
    ? wallAtYear(document, edge, moment)
    : beltOrBlockAtYear(document, edge as Exclude<EdgeFeature, { properties: { kind: 'wall' } }>, moment);
}

/** @param widthM of a belt or wall. */
export function edgeShape(edge: EdgeFeature, frame: Frame, widthM: number): EdgeShape {
  const { geometry } = edge;
  return geometry.type === 'Polygon'
    ? { line: ringToLocal(frame, geometry.coordinates[0]), closed: true, halfWidthM: 0 }
    : { line: ringToLocal(frame, geometry.coordinates), closed: false, halfWidthM: widthM / 2 };
}

/** The ground of a field that lies beside an edge. */
export interface EdgeGround {
  readonly grid: GridSpec;
  /** 1 for cells of the field. */
  readonly mask: Uint8Array;
}

/** Cells along the longer side of a field on which the ground beside its edge is looked for. */
const ROUGHLY = 120;
/** Cells a height of the edge. */
const FINE = 12;
const FINEST_M = 0.25;
const COARSEST_M = 2;
const MOST_CELLS = 24_000;

/** How far an edge of this height is looked at: as far as it shelters. */
export const reachOfM = (heightM: number): number => DOWNWIND_REACH_H * heightM;

/** A field's ground within reach of an edge, on cells fine enough for it; null: there is none. */
export function edgeGround(
  field: FieldFeature,
  frame: Frame,
  shape: EdgeShape,
  heightM: number,
): EdgeGround | null {
  const rings = field.geometry.coordinates.map((ring) => ringToLocal(frame, ring));
  const box = localBoxOf(
    frame,
    field.geometry.coordinates[0].map(([lon, lat]) => [lon, lat] as const),
  );
  if (!box) return null;
  const roughM = Math.max(0.5, Math.max(box.east - box.west, box.north - box.south) / ROUGHLY);
  const rough = gridCovering(box, roughM);
  const { distanceM } = besideEdge(rough, cellsInside(rough, rings), shape);
  let [west, south, east, north] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (let cell = 0; cell < cellCount(rough); cell++) {
    if (!(distanceM[cell] <= reachOfM(heightM))) continue;
    const x = cellCentreX(rough, cell % rough.columns);
    const y = cellCentreY(rough, Math.floor(cell / rough.columns));
    [west, east] = [Math.min(west, x), Math.max(east, x)];
    [south, north] = [Math.min(south, y), Math.max(north, y)];
  }
  if (!(west <= east)) return null;
  const near = widenedBox({ west, south, east, north }, roughM);
  const areaM2 = (near.east - near.west) * (near.north - near.south);
  const wantedM = Math.min(COARSEST_M, Math.max(FINEST_M, heightM / FINE));
  const grid = gridCovering(near, Math.max(wantedM, Math.sqrt(areaM2 / MOST_CELLS)));
  return { grid, mask: cellsInside(grid, rings) };
}

/** Ground of a field beside an edge within ten of its heights, m2. */
function besideM2(field: FieldFeature, frame: Frame, shape: EdgeShape, heightM: number): number {
  const ground = edgeGround(field, frame, shape, heightM / 3.5);
  if (!ground) return 0;
  const { distanceM } = besideEdge(ground.grid, ground.mask, shape);
  const count = distanceM.reduce((sum, each) => (each <= 10 * heightM ? sum + 1 : sum), 0);
  const { west, east } = boxOfGrid(ground.grid);
  return count * ((east - west) / ground.grid.columns) ** 2;
}

/** The field with most ground close beside an edge; null: none has any. */
export function fieldBeside(
  fields: readonly FieldFeature[],
  frame: Frame,
  shape: EdgeShape,
  heightM: number,
): FieldFeature | null {
  let best: { field: FieldFeature; m2: number } | null = null;
  for (const field of fields) {
    const m2 = besideM2(field, frame, shape, heightM);
    if (m2 > (best?.m2 ?? 0)) best = { field, m2 };
  }
  return best?.field ?? null;
}
