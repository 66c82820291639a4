import { type Grid, gridCovering } from '../numeric/grid.ts';
import type { Frame } from './frame.ts';
import type { LocalBox } from './local-box.ts';

/**
 * Ground that falls evenly: a coarse grid that bilinear sampling reproduces to float32 rounding anywhere in the box.
 * @param plane fallDeg below the horizontal, toward towardDeg clockwise from true north.
 * @param originElevationM elevation at the frame's origin, metres.
 */
export function groundFromPlane(
  plane: { readonly fallDeg: number; readonly towardDeg: number },
  frame: Frame,
  box: LocalBox,
  originElevationM = 0,
): Grid {
  const gridRad = (plane.towardDeg * Math.PI) / 180 - frame.convergenceRad;
  const gradient = Math.tan((plane.fallDeg * Math.PI) / 180);
  const perEastM = -gradient * Math.sin(gridRad);
  const perNorthM = -gradient * Math.cos(gridRad);
  return gridOfCoarseCells(box, (xM, yM) => originElevationM + perEastM * xM + perNorthM * yM);
}

/**
 * A grid of some thirty cells across the box. Sampling holds the outermost centres' values beyond them, so
 * the grid reaches one cell past the box on every side.
 */
export function gridOfCoarseCells(
  box: LocalBox,
  elevationM: (xM: number, yM: number) => number,
  cellsAcross = 30,
): Grid {
  const sizeM = Math.max(box.east - box.west, box.north - box.south, 1);
  const cellM = Math.max(0.25, Math.ceil((sizeM / cellsAcross) * 4) / 4);
  const spec = gridCovering(
    { west: box.west - cellM, south: box.south - cellM, east: box.east + cellM, north: box.north + cellM },
    cellM,
  );
  const values = new Float32Array(spec.columns * spec.rows);
  for (let r = 0; r < spec.rows; r++) {
    const yM = spec.northM - (r + 0.5) * cellM;
    for (let c = 0; c < spec.columns; c++) {
      values[r * spec.columns + c] = elevationM(spec.westM + (c + 0.5) * cellM, yM);
    }
  }
  return { ...spec, values };
}
