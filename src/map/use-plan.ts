import type { GeoJSONSource, Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import type { AppState } from '../state/model.ts';
import { useApp } from '../state/store.ts';
import type { GeojsonSourceName } from './paper-style.ts';
import { planFeatures, selectedFeatures } from './plan-features.ts';

export function setFeatures(
  map: MapLibre,
  source: GeojsonSourceName,
  features: GeoJSON.FeatureCollection,
): void {
  void (map.getSource(source) as GeoJSONSource | undefined)?.setData(features);
}

/** Keeps the plan of one layout, as it has grown, drawn on a map. */
export function usePlanOf(
  map: MapLibre | null,
  document: AppState['document'],
  grown: AppState['grown'],
  layout: string | null,
): void {
  useEffect(() => {
    if (!map) return;
    const plan = planFeatures({ document, grown, layout });
    for (const source of ['outlines', 'stands', 'crowns', 'points', 'names'] as const)
      setFeatures(map, source, plan[source]);
  }, [map, document, grown, layout]);
}

/** Keeps the drawn plan in step with the document and the chosen year. */
export function usePlan(map: MapLibre | null): void {
  const document = useApp((app) => app.document);
  const grown = useApp((app) => app.grown);
  const layout = useApp((app) => app.layout);
  // While it is being reshaped its handles show what is chosen.
  const selection = useApp((app) => (app.hand.doing === 'reshaping' ? null : app.selection));

  usePlanOf(map, document, grown, layout);

  useEffect(() => {
    if (map) setFeatures(map, 'selected', selectedFeatures({ document, grown, selection }));
  }, [map, document, grown, selection]);
}
