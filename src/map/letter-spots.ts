import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { FACE, TEXT_PX } from './lettering.ts';

/** Letters on round spots: of a belt, of a point to tape from. They are drawn whatever else stands there. */
export function letterSpots(
  theme: InkTheme,
  of: {
    id: string;
    source: string;
    filter: ExpressionSpecification;
    /** The property that holds the letter. */
    letter: string;
    rim: { color: string; width: number };
  },
): LayerSpecification[] {
  const { id, source, filter, letter, rim } = of;
  return [
    {
      id: `${id}-spots`,
      type: 'circle',
      source,
      filter,
      paint: {
        'circle-radius': 12,
        'circle-color': theme.sheet,
        'circle-stroke-color': rim.color,
        'circle-stroke-width': rim.width,
      },
    },
    {
      id: `${id}-letters`,
      type: 'symbol',
      source,
      filter,
      layout: {
        'text-field': ['get', letter],
        'text-font': [FACE.bold],
        'text-size': TEXT_PX.usual,
        'text-allow-overlap': true,
        'text-ignore-placement': true,
      },
      paint: { 'text-color': theme.ink },
    },
  ];
}
