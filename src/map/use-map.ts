import 'maplibre-gl/dist/maplibre-gl.css';
import { Map as MapLibre, setWorkerUrl } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import { type RefObject, useEffect, useRef, useState } from 'react';
import { appStore } from '../state/store.ts';
import type { InkTheme } from './ink-theme.ts';
import { drawingLayers, paperStyle } from './paper-style.ts';
import { drawPatterns } from './plan-patterns.ts';
import { siteBounds } from './site-bounds.ts';

setWorkerUrl(workerUrl);

/**
 * The MapLibre map in a container; null until it can be drawn on.
 * @param helpId id of the element that says what the keys do
 */
export function useMap(
  container: RefObject<HTMLDivElement | null>,
  theme: InkTheme,
  helpId: string,
): MapLibre | null {
  const [map, setMap] = useState<MapLibre | null>(null);
  // A living map changes its inks below; only its first sheet is made in these.
  const firstTheme = useRef(theme);
  const inked = useRef(theme);

  useEffect(() => {
    if (!container.current) return;
    const made = new MapLibre({
      container: container.current,
      style: paperStyle(firstTheme.current),
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
      bounds: siteBounds(appStore.getState()),
      fitBoundsOptions: { padding: 48, maxZoom: 20 },
    });
    describeCanvas(made.getCanvas(), helpId);
    let alive = true;
    made.once('load', () => {
      if (!alive) return;
      drawPatterns(made, firstTheme.current);
      setMap(made);
    });
    return () => {
      alive = false;
      setMap(null);
      made.remove();
    };
  }, [container, helpId]);

  useEffect(() => {
    if (!map || inked.current === theme) return;
    inked.current = theme;
    inkAnew(map, theme);
  }, [map, theme]);

  return map;
}

/** The canvas takes the keys, so it is what a person lands on and what tells them of the keys. */
function describeCanvas(canvas: HTMLCanvasElement, helpId: string): void {
  canvas.tabIndex = 0;
  canvas.setAttribute('role', 'application');
  canvas.setAttribute('aria-label', 'Map. Arrow keys move a cross over the ground.');
  canvas.setAttribute('aria-describedby', helpId);
  canvas.dataset.testid = 'map-canvas';
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
