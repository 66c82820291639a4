/** Slope of the straight line through points (least squares). */
export function slope(points: readonly (readonly [x: number, y: number])[]): number {
  const mean = (k: 0 | 1) => points.reduce((sum, point) => sum + point[k], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const above = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  return above / points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
}
