import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import { appStore, useApp } from '../state/store.ts';
import { takenFieldBounds } from './site-bounds.ts';
import { beyond, showBox } from './use-fit-to-site.ts';

/** Where the years in one look take the room in which the whole field was seen, it is shown whole in what is left. */
export function useFitToYears(map: MapLibre | null): void {
  const open = useApp((app) => app.yearsOpen);
  useEffect(() => {
    const box = takenFieldBounds(appStore.getState());
    // The map has not yet taken its new size.
    if (!map || !open || !box || beyond(map, box)) return;
    const fit = () => {
      if (beyond(map, box)) showBox(map, box, false);
    };
    map.once('resize', fit);
    return () => {
      map.off('resize', fit);
    };
  }, [map, open]);
}
