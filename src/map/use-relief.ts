import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useMemo } from 'react';
import { toLonLat } from '../geo/frame.ts';
import { useApp } from '../state/store.ts';
import { gridCorners } from './grid-corners.ts';
import type { InkTheme } from './ink-theme.ts';
import { layPicture } from './raster-source.ts';
import { reliefOf } from './relief.ts';
import { setFeatures } from './use-plan.ts';

const NOTHING: GeoJSON.FeatureCollection = { type: 'FeatureCollection', features: [] };

/** Relief and contours of the ground, over the picture so that both can be read. */
export function useRelief(map: MapLibre | null, theme: InkTheme): void {
  const ground = useApp((app) => app.ground);
  const frame = useApp((app) => app.frame);
  const units = useApp((app) => app.unitSystem);
  const relief = useMemo(() => reliefOf(ground, frame, units), [ground, frame, units]);

  const opacity = theme.dark ? 0.35 : 0.7;
  useEffect(() => {
    if (!map) return;
    setFeatures(map, 'contours', relief?.contours ?? NOTHING);
    layPicture(
      map,
      { id: 'relief', beforeId: 'band-hatch-1', opacity },
      relief && {
        painted: relief.wash,
        corners: gridCorners(relief.grid, (xM, yM) => toLonLat(frame, [xM, yM])),
      },
    );
  }, [map, relief, frame, opacity]);
}
