/** An SVG path through shares (0 to 1) at given years; values that are not known break the line. */
export function curvePath(
  years: readonly number[],
  shares: readonly number[],
  box: { readonly width: number; readonly top: number; readonly base: number; readonly lastYear: number },
): string {
  let path = '';
  let pen = false;
  for (let index = 0; index < years.length; index++) {
    const share = shares[index];
    if (share === undefined || !Number.isFinite(share)) {
      pen = false;
      continue;
    }
    const x = (years[index] / box.lastYear) * box.width;
    const y = box.base - Math.min(1, Math.max(0, share)) * (box.base - box.top);
    path += `${pen ? 'L' : 'M'}${x.toFixed(1)},${y.toFixed(1)} `;
    pen = true;
  }
  return path.trim();
}
