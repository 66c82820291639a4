import type { LayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { all, is, shape } from './layer-filters.ts';
import { letterSpots } from './letter-spots.ts';
import { FACE, TEXT_PX } from './lettering.ts';

/** Shadow stakes and wind spots: the line to tape from, the ways off it, the lines that lead to each place, and the places with their names. */
export function stakesLayers(theme: InkTheme): LayerSpecification[] {
  const halo = { 'text-color': theme.ink, 'text-halo-color': theme.paper, 'text-halo-width': 2 } as const;
  const line = (what: string) => all(shape('LineString'), is('what', what));
  return [
    {
      id: 'stakes-shadow',
      type: 'line',
      source: 'stakes',
      filter: line('shadow'),
      paint: { 'line-color': theme.ink, 'line-width': 1.2 },
    },
    {
      id: 'stakes-square',
      type: 'line',
      source: 'stakes',
      filter: line('square'),
      paint: { 'line-color': theme.leaf, 'line-width': 1.6, 'line-dasharray': [3, 2] },
    },
    {
      id: 'stakes-line-under',
      type: 'line',
      source: 'stakes',
      filter: line('line'),
      paint: { 'line-color': theme.sheet, 'line-width': 7, 'line-opacity': 0.9 },
    },
    {
      id: 'stakes-line',
      type: 'line',
      source: 'stakes',
      filter: line('line'),
      paint: { 'line-color': theme.leaf, 'line-width': 3.6 },
    },
    ...letterSpots(theme, {
      id: 'stakes-end',
      source: 'stakes',
      filter: is('what', 'end'),
      letter: 'label',
      rim: { color: theme.leaf, width: 3 },
    }),
    {
      id: 'stakes-places',
      type: 'circle',
      source: 'stakes',
      filter: is('what', 'stake'),
      paint: {
        'circle-radius': 5,
        'circle-color': theme.ink,
        'circle-stroke-color': theme.sheet,
        'circle-stroke-width': 2,
      },
    },
    {
      id: 'stakes-times',
      type: 'symbol',
      source: 'stakes',
      filter: is('what', 'stake'),
      layout: {
        'text-field': ['get', 'label'],
        'text-font': [FACE.bold],
        'text-size': TEXT_PX.small,
        'text-variable-anchor': ['left', 'right', 'top', 'bottom'],
        'text-radial-offset': 0.8,
      },
      paint: halo,
    },
  ];
}
