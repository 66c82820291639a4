import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import { fallStripShown } from '../state/belts-found.ts';
import { useApp } from '../state/store.ts';
import { setFeatures } from './use-plan.ts';

/** Draws where the trees of the chosen edge could fall. */
export function useFallStrip(map: MapLibre | null): void {
  const area = useApp((app) => fallStripShown(app)?.area ?? null);
  useEffect(() => {
    if (!map) return;
    setFeatures(map, 'fall', {
      type: 'FeatureCollection',
      features: area ? [{ type: 'Feature', geometry: area, properties: {} }] : [],
    });
  }, [map, area]);
}
