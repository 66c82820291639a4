import type { Map as MapLibre } from 'maplibre-gl';
import { useCallback, useEffect, useRef } from 'react';
import type { LonLat } from '../geo/frame.ts';
import { distanceM } from '../geo/geodesic.ts';
import { appStore, useApp } from '../state/store.ts';
import { type Bounds, siteBounds, takenFieldBounds } from './site-bounds.ts';

/** A site whose centre is this far from the last one is another site, not an edit of the same. */
const OTHER_SITE_M = 3000;

export const motionReduced = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

function showBox(map: MapLibre, box: Bounds, animate: boolean): void {
  const narrow = map.getContainer().clientWidth < 600;
  map.fitBounds(box, {
    padding: narrow
      ? { top: 24, right: 16, bottom: 72, left: 16 }
      : { top: 40, right: 56, bottom: 64, left: 56 },
    maxZoom: 20,
    bearing: 0,
    animate: animate && !motionReduced(),
    duration: 400,
  });
}

/** Shows the whole site when another one is opened; while it is edited the view stays where it is. */
export function useFitToSite(map: MapLibre | null): { showSite: () => void; showField: () => void } {
  const frame = useApp((app) => app.frame);
  const shown = useRef<LonLat | null>(null);
  useEffect(() => {
    if (!map) return;
    const before = shown.current;
    shown.current = frame.centreLonLat;
    if (!before || distanceM(before, frame.centreLonLat) > OTHER_SITE_M)
      showBox(map, siteBounds(appStore.getState()), false);
  }, [map, frame]);
  const showSite = useCallback(() => {
    if (map) showBox(map, siteBounds(appStore.getState()), true);
  }, [map]);
  const showField = useCallback(() => {
    const box = takenFieldBounds(appStore.getState());
    if (map && box) showBox(map, box, true);
  }, [map]);
  return { showSite, showField };
}
