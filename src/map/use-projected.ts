import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useState } from 'react';
import type { LonLat } from '../geo/frame.ts';

export interface OnScreen {
  readonly x: number;
  readonly y: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Where a place is on the map's sheet, px from its top left corner; follows the map. */
export function useProjected(map: MapLibre | null, place: LonLat | null): OnScreen | null {
  const [, moved] = useState(0);
  useEffect(() => {
    if (!map || !place) return;
    const again = () => moved((count) => count + 1);
    map.on('move', again);
    map.on('resize', again);
    return () => {
      map.off('move', again);
      map.off('resize', again);
    };
  }, [map, place]);
  if (!map || !place) return null;
  const { x, y } = map.project([place[0], place[1]]);
  const { clientWidth, clientHeight } = map.getContainer();
  return { x, y, widthPx: clientWidth, heightPx: clientHeight };
}
