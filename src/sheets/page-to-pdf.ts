import { jsPDF } from 'jspdf';
import { PAPER } from './inks.ts';
import type { Mark, PageModel, PointMm, Stroke } from './page-model.ts';

/** TrueType files of Atkinson Hyperlegible Next, whole. */
export interface PdfFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

const FAMILY = 'Atkinson';
const POINTS_PER_MM = 72 / 25.4;

/** jsPDF takes font files as strings with one character a byte. */
function binaryString(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return text;
}

/**
 * The pages as one PDF of their true size, with the type embedded; viewers that heed it print without rescaling.
 * `compressed: false` leaves the drawing operators readable.
 */
export function pagesToPdf(
  pages: readonly PageModel[],
  fonts: PdfFonts,
  options: { compressed: boolean } = { compressed: true },
): ArrayBuffer {
  const format = (page: PageModel): [number, number] => [page.widthMm, page.heightMm];
  const orientation = (page: PageModel) => (page.widthMm > page.heightMm ? 'landscape' : 'portrait');
  const pdf = new jsPDF({
    unit: 'mm',
    format: format(pages[0]),
    orientation: orientation(pages[0]),
    compress: options.compressed,
    putOnlyUsedFonts: true,
    // Decimals of a point: a thousandth of a point is 0.0004 mm.
    floatPrecision: 3,
  });
  pdf.addFileToVFS('regular.ttf', binaryString(fonts.regular));
  pdf.addFont('regular.ttf', FAMILY, 'normal');
  pdf.addFileToVFS('bold.ttf', binaryString(fonts.bold));
  pdf.addFont('bold.ttf', FAMILY, 'bold');
  pdf.setDocumentProperties({ title: pages[0].title, creator: 'Leeglade' });
  pdf.viewerPreferences({ PrintScaling: 'None', DisplayDocTitle: true });
  pages.forEach((page, i) => {
    if (i > 0) pdf.addPage(format(page), orientation(page));
    for (const mark of page.marks) draw(pdf, mark);
  });
  return pdf.output('arraybuffer');
}

function takeStroke(pdf: jsPDF, stroke: Stroke | undefined): void {
  if (!stroke) return;
  pdf.setDrawColor(stroke.ink);
  pdf.setLineWidth(stroke.widthMm);
  pdf.setLineDashPattern([...(stroke.dashMm ?? [])], 0);
}

function trace(pdf: jsPDF, points: readonly PointMm[], close: boolean): void {
  points.forEach(([x, y], i) => {
    if (i === 0) pdf.moveTo(x, y);
    else pdf.lineTo(x, y);
  });
  if (close) pdf.close();
}

function paint(pdf: jsPDF, fill: string | undefined, stroke: Stroke | undefined): void {
  if (fill && stroke) pdf.fillStrokeEvenOdd();
  else if (fill) pdf.fillEvenOdd();
  else if (stroke) pdf.stroke();
  else pdf.discardPath();
}

function draw(pdf: jsPDF, mark: Mark): void {
  switch (mark.mark) {
    case 'line':
      takeStroke(pdf, mark.stroke);
      trace(pdf, mark.pointsMm, false);
      pdf.stroke();
      return;
    case 'lines':
      if (mark.linesMm.length === 0) return;
      takeStroke(pdf, mark.stroke);
      for (const line of mark.linesMm) trace(pdf, line, false);
      pdf.stroke();
      return;
    case 'polygon':
      takeStroke(pdf, mark.stroke);
      if (mark.fill) pdf.setFillColor(mark.fill);
      for (const ring of mark.ringsMm) trace(pdf, ring, true);
      paint(pdf, mark.fill, mark.stroke);
      return;
    case 'circle':
      takeStroke(pdf, mark.stroke);
      if (mark.fill) pdf.setFillColor(mark.fill);
      pdf.circle(
        mark.centreMm[0],
        mark.centreMm[1],
        mark.radiusMm,
        mark.fill && mark.stroke ? 'FD' : mark.fill ? 'F' : 'S',
      );
      return;
    case 'text':
      drawText(pdf, mark);
      return;
    case 'clip': {
      const { xMm, yMm, widthMm, heightMm } = mark.boxMm;
      pdf.saveGraphicsState();
      pdf.rect(xMm, yMm, widthMm, heightMm, null);
      pdf.clip();
      pdf.discardPath();
      for (const inner of mark.marks) draw(pdf, inner);
      pdf.restoreGraphicsState();
    }
  }
}

function drawText(pdf: jsPDF, mark: Extract<Mark, { mark: 'text' }>): void {
  pdf.setFont(FAMILY, mark.bold ? 'bold' : 'normal');
  pdf.setFontSize(mark.sizeMm * POINTS_PER_MM);
  const align = mark.anchor === 'middle' ? 'center' : mark.anchor === 'end' ? 'right' : 'left';
  // jsPDF turns anticlockwise, and aligns before it turns; so a turned text is shifted along its own line by hand.
  const turnDeg = mark.turnDeg ?? 0;
  const share = align === 'center' ? 0.5 : align === 'right' ? 1 : 0;
  const shiftMm = pdf.getTextWidth(mark.text) * share;
  const rad = (turnDeg * Math.PI) / 180;
  const x = mark.atMm[0] - shiftMm * Math.cos(rad);
  const y = mark.atMm[1] - shiftMm * Math.sin(rad);
  if (mark.haloMm) {
    pdf.setDrawColor(PAPER);
    pdf.setLineWidth(2 * mark.haloMm);
    pdf.setLineDashPattern([], 0);
    pdf.setLineJoin('round');
    pdf.text(mark.text, x, y, { angle: -turnDeg, renderingMode: 'stroke' });
    pdf.setLineJoin('miter');
  }
  pdf.setTextColor(mark.ink);
  pdf.text(mark.text, x, y, { angle: -turnDeg });
}
