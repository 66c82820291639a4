import { MEASURED_BELTS } from '../src/scene/belt-curve.ts';
import { pageToSvg } from '../src/sheets/page-to-svg.ts';
import { drawShelterCurve } from '../src/sheets/shelter-curve.ts';
import { functionCurve } from '../src/wind/measured-belts.ts';

/** Width of the two drawn belts, in heights. */
const WIDTH_H = 0.3;

/** The barrier function for a half-open and a dense belt beside the published points, as SVG. */
export function shelterCurvePicture(): string {
  const size = { width: 760, height: 420, text: 14, pen: 0.9 };
  const marks = drawShelterCurve(
    { curves: [functionCurve(0.4, WIDTH_H), functionCurve(0.1, WIDTH_H)], measured: MEASURED_BELTS },
    size,
    undefined,
    [
      { text: 'the function, porosity 0.4', distanceH: 11.8, share: 0.42, of: 'function' },
      { text: 'and 0.1 (dashed)', distanceH: 5.2, share: 0.1, of: 'function' },
      { text: 'Iowa, a moderately dense belt', distanceH: 15.7, share: 0.625, of: 'measured' },
      { text: 'Moravia', distanceH: 9.5, share: 0.685, of: 'measured' },
      { text: 'Ontario: quietest of nine', distanceH: -2.4, share: 0.735, of: 'measured' },
      { text: 'Victoria: −20 % ends, eleven belts', distanceH: 9.2, share: 0.815, of: 'measured' },
    ],
  );
  const svg = pageToSvg({
    title:
      'Wind left behind a belt, by distance in its heights: the published function and what was measured',
    widthMm: size.width,
    heightMm: size.height,
    marks,
  });
  // On a page of text its units are pixels.
  return `${svg.replace(/width="(\d+)mm" height="(\d+)mm"/, 'width="$1" height="$2"')}\n`;
}
