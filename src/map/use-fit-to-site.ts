import type { Map as MapLibre } from 'maplibre-gl';
import { useCallback, useEffect } from 'react';
import { distanceM } from '../geo/geodesic.ts';
import type { AppState } from '../state/model.ts';
import { appStore } from '../state/store.ts';
import { type Bounds, siteBounds, takenFieldBounds } from './site-bounds.ts';

/** A site whose centre is this far from the last one is another site, not an edit of the same. */
const OTHER_SITE_M = 3000;

export const motionReduced = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Width of the panel where it slides over the map, as in the style sheet. */
const PANEL_PX = 368;
const PANEL_SLIDES_OVER = '(min-width: 641px) and (max-width: 1100px)';

/** Room for the read-out, the scale, the legend where it stands open, and a panel that lies over the map. */
function paddingFor(widthPx: number) {
  if (widthPx < 700) return { top: 24, right: 16, bottom: 72, left: 16 };
  const covered = appStore.getState().panelOpen && matchMedia(PANEL_SLIDES_OVER).matches;
  if (covered) return { top: 40, right: 40, bottom: 64, left: PANEL_PX + 24 };
  return { top: 40, right: widthPx > 800 ? 280 : 40, bottom: 64, left: 40 };
}

/** What is shown when a site opens: the field that is taken, except where fields are being chosen; else everything. */
function openingBox(state: AppState): Bounds {
  return (state.step === 'ground' ? null : takenFieldBounds(state)) ?? siteBounds(state);
}

export function showBox(map: MapLibre, box: Bounds, animate: boolean): void {
  map.fitBounds(box, {
    padding: paddingFor(map.getContainer().clientWidth),
    maxZoom: 20,
    bearing: 0,
    animate: animate && !motionReduced(),
    duration: 400,
  });
}

/** True where not all of the box is on the sheet. */
function beyond(map: MapLibre, [southWest, northEast]: Bounds): boolean {
  const seen = map.getBounds();
  return !seen.contains(southWest) || !seen.contains(northEast);
}

/**
 * Whether a document is another site and not an edit of the one before: it lies elsewhere, or nothing of the other is
 * in it and it is more than a first thing drawn in view.
 */
function isOtherSite(map: MapLibre, now: AppState, before: AppState): boolean {
  if (distanceM(before.centre, now.centre) > OTHER_SITE_M) return true;
  const { features } = now.document;
  const ids = new Set(before.document.features.map(({ id }) => id));
  if (features.length === 0 || features.some(({ id }) => ids.has(id))) return false;
  return features.length > 1 || beyond(map, siteBounds(now));
}

/** Shows a site when it is opened; while it is edited the view stays where it is. */
export function useFitToSite(map: MapLibre | null): { showSite: () => void; showField: () => void } {
  useEffect(() => {
    if (!map) return;
    showBox(map, openingBox(appStore.getState()), false);
    return appStore.subscribe((now, before) => {
      if (now.document !== before.document && isOtherSite(map, now, before))
        showBox(map, openingBox(now), false);
    });
  }, [map]);
  const showSite = useCallback(() => {
    if (map) showBox(map, siteBounds(appStore.getState()), true);
  }, [map]);
  const showField = useCallback(() => {
    const box = takenFieldBounds(appStore.getState());
    if (map && box) showBox(map, box, true);
  }, [map]);
  return { showSite, showField };
}
