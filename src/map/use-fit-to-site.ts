import type { Map as MapLibre } from 'maplibre-gl';
import { useCallback, useEffect } from 'react';
import { distanceM } from '../geo/geodesic.ts';
import type { AppState } from '../state/model.ts';
import { appStore } from '../state/store.ts';
import { type Bounds, siteBounds, takenFieldBounds } from './site-bounds.ts';

/** A site whose centre is this far from the last one is another site, not an edit of the same. */
const OTHER_SITE_M = 3000;

export const motionReduced = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** How much of the sheet an open panel lies over, px: from the left on a tablet, from below on a phone. */
function coveredPx(sheet: DOMRect): { left: number; bottom: number } {
  const panel = document.querySelector('.panel-side[data-open="true"]')?.getBoundingClientRect();
  const none = { left: 0, bottom: 0 };
  if (!panel || panel.right <= sheet.left || panel.top >= sheet.bottom) return none;
  if (panel.right < sheet.right) return { ...none, left: panel.right - sheet.left };
  return { ...none, bottom: sheet.bottom - panel.top };
}

/** Room for the read-out, the scale, the legend where it stands open, and a panel that lies over the map. */
function paddingFor(sheet: DOMRect) {
  const { left, bottom } = coveredPx(sheet);
  if (left > 0) return { top: 40, right: 32, bottom: 120, left: left + 24 };
  if (bottom > 0) return { top: 24, right: 16, bottom: bottom + 16, left: 16 };
  if (sheet.width < 700) return { top: 24, right: 16, bottom: 72, left: 16 };
  return { top: 40, right: sheet.width > 800 ? 280 : 40, bottom: 64, left: 40 };
}

/** What is shown when a site opens: the field that is taken, except where fields are being chosen; else everything. */
function openingBox(state: AppState): Bounds {
  return (state.step === 'ground' ? null : takenFieldBounds(state)) ?? siteBounds(state);
}

export function showBox(map: MapLibre, box: Bounds, animate: boolean): void {
  map.fitBounds(box, {
    padding: paddingFor(map.getContainer().getBoundingClientRect()),
    maxZoom: 20,
    bearing: 0,
    animate: animate && !motionReduced(),
    duration: 400,
  });
}

/** True where not all of the box is on the sheet. */
export function beyond(map: MapLibre, [southWest, northEast]: Bounds): boolean {
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
