import { drainage } from '../geo/drainage.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import {
  cellCentreX,
  cellCentreY,
  cellCount,
  type Grid,
  type GridSpec,
  gridCovering,
  sampleGrid,
} from '../numeric/grid.ts';
import { footprintPieces } from '../scene/build-prisms.ts';
import type { SceneOptions } from '../scene/options.ts';
import { standingAt } from '../scene/things.ts';
import type { SiteDocument } from '../site/document.ts';
import type { ColdFigures } from './choose-types.ts';

/** Where cold air would gather on a still night; a rank and a map, no temperature. Row-major as the grid. */
export interface ColdAir {
  readonly grid: GridSpec;
  /** The ground itself on these cells, m above datum; NaN where there is none. */
  readonly elevationM: Float32Array;
  /** Depth to which the land would fill before it spills over, m; NaN without ground. */
  readonly depthM: Float32Array;
  /** The same with what belts and woods hold back. */
  readonly dammedDepthM: Float32Array;
  /** Ground that drains through each cell, m2. */
  readonly upslopeM2: Float64Array;
}

/** Finer ground than this many cells says nothing more of cold air. */
const MOST_CELLS = 250_000;
/** Cold air that drains lies this deep, and so much of it a dense belt holds back. Common practice, no source. */
const DAM_M = 2;
/** What is open below lets it out, and what is thin lets it through. Common practice, no source. */
const OPEN_FOOT_M = 0.5;
const THIN_POROSITY = 0.6;
/** A hollow: deeper than a hand's breadth would be a puddle; deeper than this counts. Our choice. */
const HOLLOW_M = 0.3;

/** Cold air over the whole ground, with what stands in the options' year. */
export function coldAir(document: SiteDocument, options: SceneOptions): ColdAir {
  const { ground } = options;
  const coarse = coarser(ground, MOST_CELLS);
  const open = drainage(coarse);
  const dammed = { ...coarse, values: coarse.values.slice() };
  const raised = raiseDams(document, options, dammed);
  const held = raised ? drainage(dammed) : open;
  // What stands on a dam is not under cold air.
  const depth = (filledM: Float32Array) =>
    filledM.map((level, cell) => Math.max(0, level - coarse.values[cell]));
  return {
    grid: coarse,
    elevationM: coarse.values,
    depthM: depth(open.filledM),
    dammedDepthM: depth(held.filledM).map((m, cell) => (dammed.values[cell] > coarse.values[cell] ? 0 : m)),
    upslopeM2: open.upslopeM2,
  };
}

/** The ground on cells of at most so many. */
function coarser(ground: Grid, mostCells: number): Grid {
  if (cellCount(ground) <= mostCells) return ground;
  const { columns, rows, cellM, westM, northM } = ground;
  const coarseM = cellM * Math.ceil(Math.sqrt(cellCount(ground) / mostCells));
  const box = { west: westM, east: westM + columns * cellM, north: northM, south: northM - rows * cellM };
  const spec = gridCovering(box, coarseM);
  const values = Float32Array.from({ length: cellCount(spec) }, (_, cell) =>
    sampleGrid(
      ground,
      cellCentreX(spec, cell % spec.columns),
      cellCentreY(spec, Math.floor(cell / spec.columns)),
    ),
  );
  return { ...spec, values };
}

/** Raises the ground under dense belts and woods that reach down to it. Mutates `ground`. @returns whether any is. */
function raiseDams(document: SiteDocument, options: SceneOptions, ground: Grid): boolean {
  const mask = new Uint8Array(cellCount(ground));
  for (const standing of standingAt(document, options).breaks) {
    const { stand, feature } = standing;
    const { geometry } = feature;
    if (stand.baseM > OPEN_FOOT_M || stand.porosityOn > THIN_POROSITY || stand.heightM < DAM_M) continue;
    if (geometry.type === 'Polygon')
      cellsInside(
        ground,
        geometry.coordinates.map((ring) => ringToLocal(options.frame, ring)),
        mask,
      );
    else
      for (const ring of footprintPieces(options.frame, standing)) {
        cellsInside(ground, [ring], mask);
        markOutline(ground, ring, mask);
      }
  }
  let raised = false;
  for (let cell = 0; cell < mask.length; cell++)
    if (mask[cell]) {
      ground.values[cell] += DAM_M;
      raised = true;
    }
  return raised;
}

/** A strip may be narrower than a cell: every cell that its outline touches holds back, so that none leaks between. */
function markOutline(ground: GridSpec, ring: readonly (readonly [number, number])[], mask: Uint8Array): void {
  const step = ground.cellM / 4;
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[(i + 1) % ring.length];
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / step));
    for (let k = 0; k <= steps; k++) {
      const column = Math.floor((ax + ((bx - ax) * k) / steps - ground.westM) / ground.cellM);
      const row = Math.floor((ground.northM - (ay + ((by - ay) * k) / steps)) / ground.cellM);
      if (column >= 0 && row >= 0 && column < ground.columns && row < ground.rows)
        mask[row * ground.columns + column] = 1;
    }
  }
}

/** What it comes to on a field. @param rings of the field, local metres. */
export function coldFigures(
  { grid, depthM, dammedDepthM, upslopeM2 }: ColdAir,
  rings: readonly (readonly (readonly [number, number])[])[],
): ColdFigures {
  const mask = cellsInside(grid, rings);
  let [count, depth, hollow, dammed, most] = [0, 0, 0, 0, 0];
  for (let cell = 0; cell < mask.length; cell++) {
    if (!mask[cell] || Number.isNaN(depthM[cell])) continue;
    count++;
    depth += depthM[cell];
    if (depthM[cell] > HOLLOW_M) hollow++;
    if (dammedDepthM[cell] > HOLLOW_M) dammed++;
    most = Math.max(most, upslopeM2[cell]);
  }
  const share = (sum: number) => (count > 0 ? sum / count : Number.NaN);
  return {
    meanDepthM: share(depth),
    hollowShare: share(hollow),
    dammedShare: share(dammed),
    drainsThroughM2: Math.max(0, most - count * grid.cellM ** 2),
  };
}
