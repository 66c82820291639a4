import { PAPER } from './inks.ts';
import type { Mark, PageModel, PointMm, Stroke } from './page-model.ts';

const FONT = "'Atkinson Hyperlegible Next Variable', 'Atkinson Hyperlegible Next', sans-serif";

/** Thousandths of a millimetre are finer than any printer. */
const mm = (value: number): string => String(Math.round(value * 1000) / 1000);
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const strokeOf = (stroke: Stroke | undefined): string =>
  stroke
    ? ` stroke="${stroke.ink}" stroke-width="${mm(stroke.widthMm)}"${
        stroke.dashMm ? ` stroke-dasharray="${stroke.dashMm.map(mm).join(' ')}"` : ''
      }`
    : '';
const path = (points: readonly PointMm[], close: boolean): string =>
  points.length === 0 ? '' : `M${points.map(([x, y]) => `${mm(x)} ${mm(y)}`).join('L')}${close ? 'Z' : ''}`;

/**
 * The page as an SVG of its true size: one user unit is one millimetre, and `width` and `height` say so. Printed
 * without rescaling, its lengths are those of the page model.
 */
export function pageToSvg(page: PageModel): string {
  const draw = (mark: Mark): string => {
    switch (mark.mark) {
      case 'line':
        return `<path d="${path(mark.pointsMm, false)}" fill="none"${strokeOf(mark.stroke)}/>`;
      case 'lines':
        if (mark.linesMm.length === 0) return '';
        return `<path d="${mark.linesMm.map((line) => path(line, false)).join('')}" fill="none"${strokeOf(mark.stroke)}/>`;
      case 'polygon':
        return `<path d="${mark.ringsMm.map((ring) => path(ring, true)).join('')}" fill="${
          mark.fill ?? 'none'
        }" fill-rule="evenodd"${strokeOf(mark.stroke)}/>`;
      case 'circle':
        return `<circle cx="${mm(mark.centreMm[0])}" cy="${mm(mark.centreMm[1])}" r="${mm(mark.radiusMm)}" fill="${
          mark.fill ?? 'none'
        }"${strokeOf(mark.stroke)}/>`;
      case 'text': {
        const [x, y] = mark.atMm;
        const turn = mark.turnDeg ? ` transform="rotate(${mm(mark.turnDeg)} ${mm(x)} ${mm(y)})"` : '';
        const halo = mark.haloMm
          ? ` paint-order="stroke" stroke="${PAPER}" stroke-width="${mm(2 * mark.haloMm)}" stroke-linejoin="round"`
          : '';
        return `<text x="${mm(x)}" y="${mm(y)}" font-size="${mm(mark.sizeMm)}"${
          mark.bold ? ' font-weight="700"' : ''
        } text-anchor="${mark.anchor ?? 'start'}" fill="${mark.ink}"${halo}${turn}>${escaped(mark.text)}</text>`;
      }
      case 'clip': {
        // A nested drawing cuts at its own edges; a clip path would need an id, and a page is shown more than once.
        const { xMm, yMm, widthMm, heightMm } = mark.boxMm;
        const box = `x="${mm(xMm)}" y="${mm(yMm)}" width="${mm(widthMm)}" height="${mm(heightMm)}"`;
        const view = `viewBox="${[xMm, yMm, widthMm, heightMm].map(mm).join(' ')}"`;
        return `<svg ${box} ${view} overflow="hidden">${mark.marks.map(draw).join('')}</svg>`;
      }
    }
  };
  const size = `width="${mm(page.widthMm)}mm" height="${mm(page.heightMm)}mm"`;
  const view = `viewBox="0 0 ${mm(page.widthMm)} ${mm(page.heightMm)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${view} font-family="${FONT}" role="img"><title>${escaped(
    page.title,
  )}</title><rect width="100%" height="100%" fill="${PAPER}"/>${page.marks.map(draw).join('\n')}</svg>`;
}
