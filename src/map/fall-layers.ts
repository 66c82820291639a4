import type { LayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';

/** The strip in which the trees of the chosen edge could fall. */
export function fallLayers(theme: InkTheme): LayerSpecification[] {
  return [
    {
      id: 'fall-wash',
      type: 'fill',
      source: 'fall',
      paint: { 'fill-color': theme.clay, 'fill-opacity': 0.08 },
    },
    {
      id: 'fall-edge',
      type: 'line',
      source: 'fall',
      paint: { 'line-color': theme.clay, 'line-width': 2, 'line-dasharray': [4, 2.5] },
    },
  ];
}
