import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useRef } from 'react';
import type { LonLat } from '../geo/frame.ts';
import type { Bounds } from './site-bounds.ts';
import { showBox } from './use-fit-to-site.ts';

/**
 * Shows all of what is opened; while it stays the same one, its changes leave the view where it is.
 * @param opened what is open; null while nothing is
 * @param places where it lies; null while nothing is open
 * @param aboutShare ground shown round it, as a share of its extent
 */
export function useShowOpened(
  map: MapLibre | null,
  opened: unknown,
  places: readonly LonLat[] | null,
  aboutShare: number,
): void {
  const shown = useRef<unknown>(null);
  useEffect(() => {
    if (map && places && opened !== shown.current) showBox(map, boundsAbout(places, aboutShare), true);
    shown.current = map && opened;
  }, [map, opened, places, aboutShare]);
}

function boundsAbout(places: readonly LonLat[], aboutShare: number): Bounds {
  const range = (values: readonly number[]): [number, number] => {
    const [least, most] = [Math.min(...values), Math.max(...values)];
    const about = (most - least) * aboutShare;
    return [least - about, most + about];
  };
  const [west, east] = range(places.map(([lon]) => lon));
  const [south, north] = range(places.map(([, lat]) => lat));
  return [
    [west, south],
    [east, north],
  ];
}
