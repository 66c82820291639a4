import { useEffect, useMemo, useRef } from 'react';
import { altitudeAxis, COMPASS_LINES, compassAxis } from '../../sheets/horizon-axes.ts';
import type { HorizonInput } from '../../sheets/horizon-input.ts';
import type { StripSizes } from '../../sheets/horizon-scale.ts';
import { drawStrip, stripTopDeg } from '../../sheets/horizon-strip.ts';
import { drawnPaths, highestOf } from '../../sheets/horizon-sun.ts';
import { horizonInWords } from '../../sheets/horizon-words.ts';
import { pageToSvg } from '../../sheets/page-to-svg.ts';
import { SvgPage } from '../print/svg-page.tsx';

/** Lengths of the strip on the screen, CSS pixels: small enough for a wide window, large enough for a finger to scroll. */
const SIZES: StripSizes = { perDeg: 3.25, text: 13, pen: 0.55 };
const AXIS_PX = 54;
/** Room above the strip for the uppermost altitude. */
const HEAD_PX = 8;
const WIDTH_PX = 360 * SIZES.perDeg;

/** The strip as it is printed, to be scrolled where it is wider than the window; the altitudes stay in sight. */
export function StripView(props: { readonly input: HorizonInput; readonly chosen: number | null }) {
  const { input, chosen } = props;
  const scroller = useRef<HTMLDivElement>(null);
  const topDeg = stripTopDeg(input.view);
  const underPx = HEAD_PX + topDeg * SIZES.perDeg;
  const heightPx = underPx + SIZES.text * COMPASS_LINES;
  const strip = useMemo(
    () =>
      pageToSvg({
        title: 'The horizon from here',
        widthMm: WIDTH_PX,
        heightMm: heightPx,
        marks: [
          ...drawStrip(input, topDeg, SIZES, { left: 0, top: HEAD_PX }, chosen),
          ...compassAxis(input.declinationDeg, SIZES, 0, underPx),
        ],
      }),
    [input, chosen, topDeg, heightPx, underPx],
  );
  const axis = useMemo(
    () =>
      pageToSvg({
        title: 'Degrees and fists above the horizontal',
        widthMm: AXIS_PX,
        heightMm: heightPx,
        marks: altitudeAxis(topDeg, SIZES, { x: AXIS_PX - 6, top: HEAD_PX, anchor: 'end' }),
      }),
    [topDeg, heightPx],
  );
  const { view } = input;
  useEffect(() => {
    // Where it does not fit it opens on the noon sun, in the middle of what is seen.
    const box = scroller.current;
    const [path] = drawnPaths(view);
    if (box && path)
      box.scrollLeft = highestOf(path).azimuthDeg * SIZES.perDeg - (box.clientWidth - AXIS_PX) / 2;
  }, [view]);
  useEffect(() => {
    // What is pointed out is brought into sight.
    const box = scroller.current;
    const outline = view.outlines.find(({ thing }) => thing === chosen);
    if (!box || !outline) return;
    box.scrollIntoView({ block: 'nearest' });
    box.scrollLeft = outline.topAzimuthDeg * SIZES.perDeg - (box.clientWidth - AXIS_PX) / 2;
  }, [view, chosen]);
  return (
    <figure className="horizon-strip">
      <section
        ref={scroller}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by Tab, for the arrow keys
        tabIndex={0}
        aria-label="The horizon unrolled, from north over east, south and west"
      >
        <div className="horizon-axis" style={{ width: AXIS_PX, height: heightPx }} aria-hidden="true">
          <SvgPage svg={axis} />
        </div>
        <div style={{ width: WIDTH_PX, height: heightPx }} aria-hidden="true">
          <SvgPage svg={strip} />
        </div>
      </section>
      <figcaption>
        <p className="small soft">
          A fist at the end of your stretched arm is about 10°. Degrees are from true north; a compass shows
          the needle’s figure.
        </p>
        <details>
          <summary>The same in words</summary>
          <ul>
            {horizonInWords(input).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
      </figcaption>
    </figure>
  );
}
