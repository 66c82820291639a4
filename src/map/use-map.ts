import 'maplibre-gl/dist/maplibre-gl.css';
import { Map as MapLibre, setWorkerUrl } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import { type RefObject, useEffect, useRef, useState } from 'react';
import type { InkTheme } from './ink-theme.ts';
import { drawingLayers, paperStyle } from './paper-style.ts';
import { drawPatterns } from './plan-patterns.ts';
import type { Bounds } from './site-bounds.ts';

setWorkerUrl(workerUrl);

/** What a map is for: asked once, when it is made. */
export interface MapUse {
  /** What it is called by those who do not see it. */
  readonly label: string;
  /** Id of the element that says what the keys do. */
  readonly helpId: string;
  readonly testId: string;
  /** Whether the arrow keys move the sheet; otherwise they are somebody else's (drawing/use-keys.ts). */
  readonly keysMove: boolean;
  /** What it shows first, and with how much room about it, px. */
  bounds(): Bounds;
  readonly paddingPx: number;
}

/** The MapLibre map in a container; null until it can be drawn on. */
export function useMap(
  container: RefObject<HTMLDivElement | null>,
  theme: InkTheme,
  use: MapUse,
): MapLibre | null {
  const [map, setMap] = useState<MapLibre | null>(null);
  // A living map changes its inks below; only its first sheet is made in these.
  const firstTheme = useRef(theme);
  const inked = useRef(theme);
  const firstUse = useRef(use);

  useEffect(() => {
    if (!container.current) return;
    const made = new MapLibre({
      container: container.current,
      style: paperStyle(firstTheme.current),
      attributionControl: false,
      keyboard: firstUse.current.keysMove,
      maxPitch: 0,
      pitchWithRotate: false,
      touchPitch: false,
      doubleClickZoom: false,
      minZoom: 3,
      maxZoom: 23,
      fadeDuration: 0,
      bounds: firstUse.current.bounds(),
      fitBoundsOptions: { padding: firstUse.current.paddingPx, maxZoom: 20 },
    });
    describeCanvas(made.getCanvas(), firstUse.current);
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
  }, [container]);

  useEffect(() => {
    if (!map || inked.current === theme) return;
    inked.current = theme;
    inkAnew(map, theme);
  }, [map, theme]);

  return map;
}

/** The canvas takes the keys, so it is what a person lands on and what tells them of the keys. */
function describeCanvas(canvas: HTMLCanvasElement, { label, helpId, testId }: MapUse): void {
  canvas.tabIndex = 0;
  canvas.setAttribute('role', 'application');
  canvas.setAttribute('aria-label', label);
  canvas.setAttribute('aria-describedby', helpId);
  canvas.dataset.testid = testId;
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
