import { cellCentreX, cellCentreY, cellCount, type GridSpec } from '../numeric/grid.ts';
import type { Drainage } from './drainage.ts';
import type { LocalXY } from './frame.ts';

/** A line along which much ground drains, downhill, local metres. */
export interface FlowLine {
  readonly line: readonly LocalXY[];
  /** Ground that has come together at its lower end, m2. */
  readonly upslopeM2: number;
}

/** Steps from cell to cell are smoothed over so many to each side: eight directions are no way that anything runs. */
const SMOOTH_OVER = 2;
/** Shorter than this many cells it is a dot. */
const SHORTEST = 4;

/**
 * Lines along the cells through which at least `fromM2` drains, each from where it begins, or from where a larger one has
 * gone on, down to where it stops or joins a line drawn before.
 * @param isStill true where nothing is drawn: what arrives there stays.
 */
export function flowLines(
  grid: GridSpec,
  { runsTo, upslopeM2 }: Pick<Drainage, 'runsTo' | 'upslopeM2'>,
  fromM2: number,
  isStill: (cell: number) => boolean,
): FlowLine[] {
  const drawn = new Uint8Array(cellCount(grid));
  const flows = (cell: number) => upslopeM2[cell] >= fromM2 && !isStill(cell);
  const fed = new Uint8Array(cellCount(grid));
  for (let cell = 0; cell < fed.length; cell++) if (runsTo[cell] !== -1 && flows(cell)) fed[runsTo[cell]] = 1;
  const heads = [...fed.keys()].filter((cell) => flows(cell) && !fed[cell]);
  const ways = heads.map((head) => wayFrom(head, runsTo, flows));
  // The longest first: what joins it ends there.
  return ways
    .toSorted((a, b) => b.length - a.length)
    .flatMap((way): FlowLine[] => {
      const joins = way.findIndex((cell) => drawn[cell]);
      const own = joins < 0 ? way : way.slice(0, joins + 1);
      for (const cell of own) drawn[cell] = 1;
      if (own.length < SHORTEST) return [];
      return [{ line: smoothed(grid, own), upslopeM2: upslopeM2[own[own.length - (joins < 0 ? 1 : 2)]] }];
    });
}

function wayFrom(head: number, runsTo: Int32Array, flows: (cell: number) => boolean): number[] {
  const way: number[] = [];
  for (let at = head; at !== -1; at = runsTo[at]) {
    way.push(at);
    if (!flows(at)) break;
  }
  return way;
}

/** Centres of cells, each the mean of those about it; both ends stay where they are. */
function smoothed(grid: GridSpec, way: readonly number[]): LocalXY[] {
  const last = way.length - 1;
  return way.map((_, i) => {
    const over = Math.min(SMOOTH_OVER, i, last - i);
    let [x, y] = [0, 0];
    for (let k = i - over; k <= i + over; k++) {
      x += cellCentreX(grid, way[k] % grid.columns);
      y += cellCentreY(grid, Math.floor(way[k] / grid.columns));
    }
    return [x / (2 * over + 1), y / (2 * over + 1)];
  });
}
