import type { LayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { FACE, TEXT_PX } from './lettering.ts';

/** The sheet under the plan: paper, the picture's ink lines and hatching, contours. Rasters are laid between them. */
export function groundLayers(theme: InkTheme): LayerSpecification[] {
  return [
    { id: 'paper', type: 'background', paint: { 'background-color': theme.paper } },
    ...[1, 2, 3, 4, 5].map(
      (depth): LayerSpecification => ({
        id: `band-hatch-${depth}`,
        type: 'fill',
        source: 'band-hatch',
        filter: ['==', ['get', 'depth'], depth],
        paint: { 'fill-pattern': `hatch-${depth}`, 'fill-antialias': false },
      }),
    ),
    {
      id: 'band-edges',
      type: 'line',
      source: 'band-edges',
      layout: { 'line-join': 'round' },
      // The bands keep their own light paper in the dark theme, so their ink stays dark.
      paint: { 'line-color': '#1d2a26', 'line-width': 0.7, 'line-opacity': 0.55 },
    },
    {
      id: 'contours',
      type: 'line',
      source: 'contours',
      layout: { 'line-join': 'round' },
      paint: {
        'line-color': theme.inkSoft,
        'line-width': ['case', ['get', 'index'], 0.9, 0.5],
        'line-opacity': ['case', ['get', 'index'], 0.6, 0.4],
      },
    },
    {
      id: 'contour-heights',
      type: 'symbol',
      source: 'contours',
      layout: {
        'symbol-placement': 'line',
        'symbol-spacing': 340,
        'text-field': ['get', 'label'],
        'text-font': [FACE.medium],
        'text-size': TEXT_PX.small,
        'text-max-angle': 28,
        'text-padding': 36,
        'symbol-sort-key': ['case', ['get', 'index'], 0, 1],
      },
      paint: {
        'text-color': theme.inkSoft,
        'text-halo-color': theme.paper,
        'text-halo-width': 1.6,
        'text-halo-blur': 0.4,
      },
    },
  ];
}
