/** Paper sizes, portrait, millimetres: ISO 216 and the North American sizes of ANSI/ASME Y14.1. */
export const PAPER_SIZES = {
  A4: [210, 297],
  A3: [297, 420],
  Letter: [215.9, 279.4],
  Legal: [215.9, 355.6],
} as const;
export type PaperSize = keyof typeof PAPER_SIZES;
export type Orientation = 'portrait' | 'landscape';

/** Blank rim that desktop printers can leave. */
export const MARGIN_MM = 10;

export function pageSizeMm(
  paper: PaperSize,
  orientation: Orientation,
): { widthMm: number; heightMm: number } {
  const [short, long] = PAPER_SIZES[paper];
  return orientation === 'portrait' ? { widthMm: short, heightMm: long } : { widthMm: long, heightMm: short };
}
