import type { LayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { is } from './layer-filters.ts';
import { letterSpots } from './letter-spots.ts';

/** Plants that are proposed to be cut: their letters in a clay rim; the one pointed out in a wider one. */
export function cutsLayers(theme: InkTheme): LayerSpecification[] {
  return [
    {
      id: 'cuts-pointed',
      type: 'circle',
      source: 'cuts',
      filter: is('pointed', true),
      paint: { 'circle-radius': 19, 'circle-color': theme.clay, 'circle-opacity': 0.35 },
    },
    ...letterSpots(theme, {
      id: 'cuts',
      source: 'cuts',
      filter: ['has', 'letter'],
      letter: 'letter',
      rim: { color: theme.clay, width: 2.5 },
    }),
  ];
}
