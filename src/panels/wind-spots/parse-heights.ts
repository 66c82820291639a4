/** Distances in belt heights as people type them, such as "2, 5 and 10": rising, none twice. Null: one is no number. */
export function parseHeights(text: string): readonly number[] | null {
  const heights = text
    .split(/\s*(?:,\s|;|\s|\band\b|,)\s*/)
    .filter((piece) => piece !== '')
    .map(Number);
  if (heights.some((each) => !(each > 0))) return null;
  return [...new Set(heights)].sort((a, b) => a - b);
}
