import type { LayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { all, is, shape } from './layer-filters.ts';
import { letterSpots } from './letter-spots.ts';

/** Belts that are proposed and not planned yet: dashed ink lines with their letters; the one pointed out heavier. */
export function proposalLayers(theme: InkTheme): LayerSpecification[] {
  return [
    {
      id: 'proposals-under',
      type: 'line',
      source: 'proposals',
      filter: shape('LineString'),
      paint: { 'line-color': theme.sheet, 'line-width': 6, 'line-opacity': 0.85 },
    },
    {
      id: 'proposals-line',
      type: 'line',
      source: 'proposals',
      filter: all(shape('LineString'), is('pointed', false)),
      paint: { 'line-color': theme.ink, 'line-width': 2.2, 'line-dasharray': [3, 2] },
    },
    {
      id: 'proposals-pointed',
      type: 'line',
      source: 'proposals',
      filter: all(shape('LineString'), is('pointed', true)),
      paint: { 'line-color': theme.leaf, 'line-width': 4.5, 'line-dasharray': [2, 1] },
    },
    ...letterSpots(theme, {
      id: 'proposals',
      source: 'proposals',
      filter: shape('Point'),
      letter: 'letter',
      rim: { color: theme.ink, width: 1.5 },
    }),
  ];
}
