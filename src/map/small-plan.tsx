import { useEffect, useId, useRef } from 'react';
import type { AppState } from '../state/model.ts';
import type { PictureRaster } from '../state/picture-raster.ts';
import { useApp } from '../state/store.ts';
import { useInkTheme } from './ink-theme.ts';
import type { LinkedView } from './linked-view.ts';
import { NorthArrow } from './north-arrow.tsx';
import { ScaleBar } from './scale-bar.tsx';
import { type Bounds, boundsAround, siteBounds } from './site-bounds.ts';
import { motionReduced } from './use-fit-to-site.ts';
import { useMap } from './use-map.ts';
import { usePicture } from './use-picture.ts';
import { usePlanOf } from './use-plan.ts';
import './map.css';
import './view-buttons.css';
import './small-plan.css';

/** Less than on the large map: the field itself has room about it. */
const PADDING_PX = 4;

/** A small plan of one layout with its picture, to be looked at: nothing is drawn or chosen on it. */
export function SmallPlan(props: {
  readonly label: string;
  readonly testId: string;
  readonly layout: string | null;
  readonly grown: AppState['grown'];
  readonly raster: PictureRaster | null;
  /** The field that is shown first; null: the whole site. */
  readonly field: AppState['document']['features'][number] | null;
  readonly view: LinkedView;
  readonly hatched: boolean;
}) {
  const { label, testId, layout, grown, raster, field, view, hatched } = props;
  const container = useRef<HTMLDivElement>(null);
  const help = useId();
  const theme = useInkTheme();
  const document = useApp((app) => app.document);
  const centre = useApp((app) => app.centre);
  const box = (): Bounds => (field ? boundsAround(field) : siteBounds({ document, centre }));
  const boxNow = useRef(box);
  boxNow.current = box;
  const map = useMap(container, theme, {
    label: `${label}. Arrow keys move both plans, plus and minus zoom them.`,
    helpId: help,
    testId,
    keysMove: true,
    bounds: box,
    paddingPx: PADDING_PX,
  });
  usePlanOf(map, document, grown, layout);
  usePicture(map, raster, theme, hatched);
  useEffect(() => (map ? view.join(map) : undefined), [map, view]);
  const fitted = useRef(field?.id ?? null);
  useEffect(() => {
    // The map is made around the first field; another one is gone to.
    const wanted = field?.id ?? null;
    if (!map || fitted.current === wanted) return;
    fitted.current = wanted;
    if (field) map.fitBounds(boundsAround(field), { padding: PADDING_PX, animate: false });
  }, [map, field]);

  useEffect(() => {
    if (!map) return;
    const home = (event: KeyboardEvent) => {
      if (event.key !== 'Home') return;
      event.preventDefault();
      map.fitBounds(boxNow.current(), { padding: PADDING_PX, animate: false });
    };
    const canvas = map.getCanvas();
    canvas.addEventListener('keydown', home);
    return () => canvas.removeEventListener('keydown', home);
  }, [map]);

  const zoom = (by: 1 | -1) => map?.easeTo({ zoom: map.getZoom() + by, duration: motionReduced() ? 0 : 180 });
  return (
    <section className="map small-plan" aria-label={label}>
      <div ref={container} className="map-sheet" />
      <div className="map-foot-left">
        <ScaleBar map={map} />
        <NorthArrow map={map} />
      </div>
      <div className="map-foot-right">
        <span className="map-zoom">
          <button type="button" onClick={() => zoom(-1)} aria-label={`${label}: farther`} title="Farther">
            −
          </button>
          <button type="button" onClick={() => zoom(1)} aria-label={`${label}: nearer`} title="Nearer">
            +
          </button>
        </span>
      </div>
      <p id={help} className="map-unseen">
        Both plans show the same piece of ground: where one goes, the other goes too. Home shows the field.
      </p>
    </section>
  );
}
