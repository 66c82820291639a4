/**
 * Deepest closed hollow of a raster: the ground is filled until every cell drains to the edge over its four
 * neighbours, by sweeping until nothing changes. Slow and obvious.
 */
export function deepestFillM(
  elevations: Float32Array,
  columns: number,
  rows: number,
): { depthM: number; column: number; row: number } {
  const level = new Float64Array(elevations.length).fill(Number.POSITIVE_INFINITY);
  const isEdge = (column: number, row: number) =>
    column === 0 || row === 0 || column === columns - 1 || row === rows - 1;
  let changed = true;
  const drain = (column: number, row: number) => {
    const i = row * columns + column;
    const lowestWay = isEdge(column, row)
      ? elevations[i]
      : Math.min(level[i - 1], level[i + 1], level[i - columns], level[i + columns]);
    const filled = Math.max(elevations[i], lowestWay);
    if (filled < level[i]) {
      level[i] = filled;
      changed = true;
    }
  };
  while (changed) {
    changed = false;
    for (let row = 0; row < rows; row++) for (let column = 0; column < columns; column++) drain(column, row);
    for (let row = rows - 1; row >= 0; row--)
      for (let column = columns - 1; column >= 0; column--) drain(column, row);
  }
  let deepest = 0;
  for (let i = 1; i < level.length; i++)
    if (level[i] - elevations[i] > level[deepest] - elevations[deepest]) deepest = i;
  return {
    depthM: level[deepest] - elevations[deepest],
    column: deepest % columns,
    row: Math.floor(deepest / columns),
  };
}
