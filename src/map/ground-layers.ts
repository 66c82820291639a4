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
    ...coldFlowLayers(),
    ...inkedLineLayers(),
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

/** Where cold air runs: thin lines with arrows. */
function coldFlowLayers(): LayerSpecification[] {
  return [
    {
      id: 'cold-flow',
      type: 'line',
      source: 'cold-flow',
      layout: { 'line-join': 'round', 'line-cap': 'round' },
      paint: {
        'line-color': COLD_INK,
        'line-width': ['case', ['get', 'much'], 1.8, 1.1],
        'line-opacity': 0.85,
      },
    },
  ];
}

/** Heavier lines at chosen values, each with its value along it. A rim of paper carries them over the dark bands. */
function inkedLineLayers(): LayerSpecification[] {
  const source = 'inked-lines';
  const layout = { 'line-join': 'round', 'line-cap': 'round' } as const;
  return [
    {
      id: 'inked-lines-rim',
      type: 'line',
      source,
      layout,
      paint: { 'line-color': LINE_PAPER, 'line-width': 5, 'line-opacity': 0.75 },
    },
    { id: source, type: 'line', source, layout, paint: { 'line-color': LINE_INK, 'line-width': 2.4 } },
    {
      id: 'inked-values',
      type: 'symbol',
      source,
      layout: {
        'symbol-placement': 'line',
        'symbol-spacing': 260,
        'text-field': ['get', 'label'],
        'text-font': [FACE.bold],
        'text-size': TEXT_PX.small,
        'text-max-angle': 40,
        'text-padding': 8,
      },
      paint: { 'text-color': LINE_INK, 'text-halo-color': LINE_PAPER, 'text-halo-width': 2.2 },
    },
  ];
}
/** The bands keep their own light paper in the dark theme, and so does what is inked on them. */
const LINE_INK = '#1d2a26';
const LINE_PAPER = '#fffefb';
const COLD_INK = '#39406a';
