import type { LayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { all, shape } from './layer-filters.ts';
import { FACE, TEXT_PX } from './lettering.ts';

/** What is in hand: the shape being drawn, its corners, the points given to whoever asked. */
export function sketchLayers(theme: InkTheme): LayerSpecification[] {
  const halo = { 'text-color': theme.ink, 'text-halo-color': theme.paper, 'text-halo-width': 1.8 } as const;
  return [
    {
      id: 'sketch-cover',
      type: 'fill',
      source: 'sketch',
      filter: shape('Polygon'),
      paint: { 'fill-color': theme.leaf, 'fill-opacity': 0.12 },
    },
    {
      id: 'sketch-line',
      type: 'line',
      source: 'sketch',
      filter: ['!', shape('Point')],
      layout: { 'line-join': 'round' },
      paint: { 'line-color': theme.leaf, 'line-width': 2.6 },
    },
    {
      id: 'sketch-corners',
      type: 'circle',
      source: 'sketch',
      filter: shape('Point'),
      paint: {
        'circle-radius': 5,
        'circle-color': theme.sheet,
        'circle-stroke-color': theme.leaf,
        'circle-stroke-width': 2.4,
      },
    },
    {
      id: 'sketch-numbers',
      type: 'symbol',
      source: 'sketch',
      filter: all(shape('Point'), ['has', 'number']),
      layout: {
        'text-field': ['get', 'number'],
        'text-font': [FACE.bold],
        'text-size': TEXT_PX.small,
        'text-anchor': 'bottom-left',
        'text-offset': [0.6, -0.3],
        'text-allow-overlap': true,
      },
      paint: halo,
    },
  ];
}
