import 'maplibre-gl/dist/maplibre-gl.css';
import { Map as MapLibre, setWorkerUrl } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import { type RefObject, useEffect, useState } from 'react';
import { appStore } from '../state/store.ts';
import type { InkTheme } from './ink-theme.ts';
import { drawingLayers, paperStyle } from './paper-style.ts';
import { drawPatterns } from './plan-patterns.ts';
import { siteBounds } from './site-bounds.ts';

setWorkerUrl(workerUrl);

/** Where the map was left, for as long as the page lives. */
let lastView: { center: [number, number]; zoom: number; bearing: number } | null = null;

/** The MapLibre map in a container; null until it can be drawn on. */
export function useMap(container: RefObject<HTMLDivElement | null>, theme: InkTheme): MapLibre | null {
  const [map, setMap] = useState<MapLibre | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme of a living map is changed below
  useEffect(() => {
    if (!container.current) return;
    const made = new MapLibre({
      container: container.current,
      style: paperStyle(theme),
      attributionControl: false,
      // Arrow keys move the cross, not the sheet (drawing/map-keys.ts).
      keyboard: false,
      maxPitch: 0,
      pitchWithRotate: false,
      touchPitch: false,
      doubleClickZoom: false,
      minZoom: 3,
      maxZoom: 23,
      fadeDuration: 0,
      ...(lastView ?? {
        bounds: siteBounds(appStore.getState()),
        fitBoundsOptions: { padding: 48, maxZoom: 20 },
      }),
    });
    made.getCanvas().removeAttribute('role');
    made.getCanvas().tabIndex = -1;
    let alive = true;
    made.once('load', () => {
      if (!alive) return;
      drawPatterns(made, theme);
      setMap(made);
    });
    made.on('moveend', () => {
      const { lng, lat } = made.getCenter();
      lastView = { center: [lng, lat], zoom: made.getZoom(), bearing: made.getBearing() };
    });
    return () => {
      alive = false;
      setMap(null);
      made.remove();
    };
  }, []);

  useEffect(() => {
    if (map) inkAnew(map, theme);
  }, [map, theme]);

  return map;
}

/** Redraws every layer in another theme's inks. */
function inkAnew(map: MapLibre, theme: InkTheme): void {
  for (const layer of drawingLayers(theme)) {
    if (!map.getLayer(layer.id)) continue;
    for (const [name, value] of Object.entries(layer.paint ?? {}))
      map.setPaintProperty(layer.id, name as 'line-color', value as string);
  }
  drawPatterns(map, theme);
}
