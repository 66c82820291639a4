/**
 * A north-up raster in the site's local frame (metres, x east and y north of the frame's origin).
 * Row-major from the north-west corner; cell (column c, row r) has its centre at
 * x = westM + (c + 0.5) * cellM, y = northM - (r + 0.5) * cellM.
 */
export interface GridSpec {
  readonly columns: number;
  readonly rows: number;
  readonly cellM: number;
  /** x of the western edge of the first column. */
  readonly westM: number;
  /** y of the northern edge of the first row. */
  readonly northM: number;
}

/** One float32 value a cell; NaN where there is no data. */
export interface Grid extends GridSpec {
  readonly values: Float32Array;
}

export const cellCount = (spec: GridSpec): number => spec.columns * spec.rows;
export const cellCentreX = (spec: GridSpec, column: number): number =>
  spec.westM + (column + 0.5) * spec.cellM;
export const cellCentreY = (spec: GridSpec, row: number): number => spec.northM - (row + 0.5) * spec.cellM;

/** Index of the cell a local point lies in; -1 outside. */
export function cellAt(spec: GridSpec, xM: number, yM: number): number {
  const column = Math.floor((xM - spec.westM) / spec.cellM);
  const row = Math.floor((spec.northM - yM) / spec.cellM);
  if (column < 0 || row < 0 || column >= spec.columns || row >= spec.rows) return -1;
  return row * spec.columns + column;
}

/** The smallest grid of whole cells that covers the box, its edges snapped outward to multiples of the cell. */
export function gridCovering(
  box: { west: number; south: number; east: number; north: number },
  cellM: number,
): GridSpec {
  const west = Math.floor(box.west / cellM + 1e-9);
  const east = Math.ceil(box.east / cellM - 1e-9);
  const south = Math.floor(box.south / cellM + 1e-9);
  const north = Math.ceil(box.north / cellM - 1e-9);
  return {
    columns: Math.max(1, east - west),
    rows: Math.max(1, north - south),
    cellM,
    westM: west * cellM,
    northM: north * cellM,
  };
}

/**
 * Bilinear value at (x, y) between cell centres, held constant beyond the outermost centres.
 * NaN when any of the four neighbours that carry weight is NaN.
 */
export function sampleGrid(grid: Grid, xM: number, yM: number): number {
  const { columns, rows, values } = grid;
  const fc = Math.min(columns - 1, Math.max(0, (xM - grid.westM) / grid.cellM - 0.5));
  const fr = Math.min(rows - 1, Math.max(0, (grid.northM - yM) / grid.cellM - 0.5));
  const c0 = Math.min(Math.floor(fc), Math.max(0, columns - 2));
  const r0 = Math.min(Math.floor(fr), Math.max(0, rows - 2));
  const u = fc - c0;
  const v = fr - r0;
  const c1 = Math.min(c0 + 1, columns - 1);
  const r1 = Math.min(r0 + 1, rows - 1);
  let sum = 0;
  if ((1 - u) * (1 - v) > 0) sum += (1 - u) * (1 - v) * values[r0 * columns + c0];
  if (u * (1 - v) > 0) sum += u * (1 - v) * values[r0 * columns + c1];
  if ((1 - u) * v > 0) sum += (1 - u) * v * values[r1 * columns + c0];
  if (u * v > 0) sum += u * v * values[r1 * columns + c1];
  return sum;
}

/** A part of a grid, and its own values of all values of the whole. */
export interface GridPart {
  readonly spec: GridSpec;
  readonly take: (values: Float32Array) => Float32Array;
}

/**
 * The part of a grid that `sampleGrid` looks at for places within a box: its own cells, one more to each side. The box
 * may reach beyond the grid.
 */
export function partWithin(
  { columns, rows, cellM, westM, northM }: GridSpec,
  box: { west: number; south: number; east: number; north: number },
): GridPart {
  const within = (cell: number, count: number) => Math.min(count - 1, Math.max(0, cell));
  const firstColumn = within(Math.floor((box.west - westM) / cellM) - 1, columns);
  const lastColumn = within(Math.floor((box.east - westM) / cellM) + 1, columns);
  const firstRow = within(Math.floor((northM - box.north) / cellM) - 1, rows);
  const lastRow = within(Math.floor((northM - box.south) / cellM) + 1, rows);
  const spec = {
    columns: lastColumn - firstColumn + 1,
    rows: lastRow - firstRow + 1,
    cellM,
    westM: westM + firstColumn * cellM,
    northM: northM - firstRow * cellM,
  };
  return {
    spec,
    take: (values) => {
      const taken = new Float32Array(cellCount(spec));
      for (let r = 0; r < spec.rows; r++) {
        const from = (firstRow + r) * columns + firstColumn;
        taken.set(values.subarray(from, from + spec.columns), r * spec.columns);
      }
      return taken;
    },
  };
}

export function croppedGrid(grid: Grid, box: Parameters<typeof partWithin>[1]): Grid {
  const { spec, take } = partWithin(grid, box);
  return { ...spec, values: take(grid.values) };
}

/** The box that a grid covers. */
export const boxOfGrid = ({ columns, rows, cellM, westM, northM }: GridSpec) => ({
  west: westM,
  south: northM - rows * cellM,
  east: westM + columns * cellM,
  north: northM,
});
