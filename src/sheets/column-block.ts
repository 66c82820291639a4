import type { Mark } from './page-model.ts';

/** Something that stands in a column of the sheet; it knows its height before it is drawn. */
export interface ColumnBlock {
  readonly heightMm: number;
  readonly draw: (xMm: number, yMm: number) => readonly Mark[];
}

export interface Column {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

const GAP_MM = 4;

/**
 * Sets blocks into columns one under the other, the next column when one is full. Gives the marks, what is left of
 * the columns, and the blocks for which there was no room.
 */
export function fillColumns(
  blocks: readonly ColumnBlock[],
  columns: readonly Column[],
): { marks: Mark[]; free: Column[]; left: ColumnBlock[] } {
  const free = columns.map((column) => ({ ...column }));
  const marks: Mark[] = [];
  const left: ColumnBlock[] = [];
  let current = 0;
  for (const block of blocks) {
    let place = current;
    while (place < free.length && free[place].heightMm < block.heightMm) place++;
    if (place === free.length) {
      left.push(block);
      continue;
    }
    current = place;
    const column = free[place];
    marks.push(...block.draw(column.xMm, column.yMm));
    const used = block.heightMm + GAP_MM;
    free[place] = { ...column, yMm: column.yMm + used, heightMm: column.heightMm - used };
  }
  return { marks, free: free.slice(current), left };
}
