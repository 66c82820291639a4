import FlatQueue from 'flatqueue';
import { cellCount, type Grid } from '../numeric/grid.ts';

/** How water, and cold air on a still night, would run over the ground. Row-major as the grid. */
export interface Drainage {
  /**
   * The ground with every hollow filled to where it would spill over, metres; beyond the grid's edge and where ground is
   * missing everything runs away. NaN without ground.
   */
  readonly filledM: Float32Array;
  /** The cell that a cell runs to; -1: out of the grid, or no ground. */
  readonly runsTo: Int32Array;
  /** Ground that runs through a cell, its own with it, m2; 0 without ground. */
  readonly upslopeM2: Float64Array;
}

const NOWHERE = -1;
/** The eight neighbours: steps in column and row, and how far their centres are, in cells. */
const STEP_COLUMN = Int8Array.of(-1, 0, 1, -1, 1, -1, 0, 1);
const STEP_ROW = Int8Array.of(-1, -1, -1, 0, 0, 1, 1, 1);
const FAR = Float64Array.from(STEP_COLUMN, (dc, k) => Math.hypot(dc, STEP_ROW[k]));

/**
 * Fills the hollows of a ground by priority-flood (Barnes, Lehman & Mulla 2014, Computers & Geosciences 62:117-127): from
 * the outlets inwards, always on from the lowest cell reached. A cell runs to its lowest neighbour by slope (D8,
 * O'Callaghan & Mark 1984), on a filled flat to the cell from which the flood came, so that all runs out.
 */
export function drainage(ground: Grid): Drainage {
  const { columns, rows, values, cellM } = ground;
  const cells = cellCount(ground);
  const filledM = new Float32Array(cells).fill(Number.NaN);
  const runsTo = new Int32Array(cells).fill(NOWHERE);
  const reached = new Uint8Array(cells);
  const order = new Int32Array(cells);
  const queue = new FlatQueue<number>();
  const reach = (cell: number, levelM: number, from: number): void => {
    reached[cell] = 1;
    filledM[cell] = Math.max(values[cell], levelM);
    runsTo[cell] = from;
    queue.push(cell, filledM[cell]);
  };
  for (let cell = 0; cell < cells; cell++)
    if (!Number.isNaN(values[cell]) && isOutlet(ground, cell)) reach(cell, values[cell], NOWHERE);

  let count = 0;
  for (let cell = queue.pop(); cell !== undefined; cell = queue.pop()) {
    order[count++] = cell;
    const column = cell % columns;
    const row = Math.floor(cell / columns);
    const runsOut = runsTo[cell] === NOWHERE;
    let steepest = 0;
    // A hot loop: plain indices.
    for (let k = 0; k < 8; k++) {
      const c = column + STEP_COLUMN[k];
      const r = row + STEP_ROW[k];
      if (c < 0 || r < 0 || c >= columns || r >= rows) continue;
      const next = r * columns + c;
      if (Number.isNaN(values[next])) continue;
      if (!reached[next]) {
        reach(next, filledM[cell], cell);
        continue;
      }
      // What is lower was reached before, and has its level.
      const fall = (filledM[cell] - filledM[next]) / FAR[k];
      if (fall <= steepest || runsOut) continue;
      steepest = fall;
      runsTo[cell] = next;
    }
  }
  return { filledM, runsTo, upslopeM2: gathered(order, count, runsTo, cellM, cells) };
}

/** At the edge of the grid, or beside missing ground. */
function isOutlet({ columns, rows, values }: Grid, cell: number): boolean {
  const column = cell % columns;
  const row = Math.floor(cell / columns);
  if (column === 0 || row === 0 || column === columns - 1 || row === rows - 1) return true;
  for (let k = 0; k < 8; k++)
    if (Number.isNaN(values[cell + STEP_ROW[k] * columns + STEP_COLUMN[k]])) return true;
  return false;
}

/** Hands each cell's ground on, the highest cells first. */
function gathered(
  order: Int32Array,
  count: number,
  runsTo: Int32Array,
  cellM: number,
  cells: number,
): Float64Array {
  const upslopeM2 = new Float64Array(cells);
  for (let k = count - 1; k >= 0; k--) {
    const cell = order[k];
    upslopeM2[cell] += cellM * cellM;
    if (runsTo[cell] !== NOWHERE) upslopeM2[runsTo[cell]] += upslopeM2[cell];
  }
  return upslopeM2;
}

/** Level ground is taken to fall by so much a metre: a wetness without end says nothing. */
const LEAST_FALL = 0.001;

/**
 * Topographic wetness index ln(a / tan b) of every cell (Beven & Kirkby 1979, Hydrological Sciences Bulletin 24:43-69):
 * a the ground that runs through each metre of contour, b the slope. NaN without ground.
 * @param slopeDeg of every cell, row-major.
 */
export function wetnessIndex(
  ground: Grid,
  { upslopeM2 }: Pick<Drainage, 'upslopeM2'>,
  slopeDeg: Float32Array,
): Float32Array {
  return Float32Array.from(upslopeM2, (areaM2, cell) => {
    const fall = Math.max(LEAST_FALL, Math.tan((slopeDeg[cell] * Math.PI) / 180));
    return areaM2 > 0 ? Math.log(areaM2 / ground.cellM / fall) : Number.NaN;
  });
}
