import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { all, is, kindIs, shape } from './layer-filters.ts';

/** A line that thins as the sheet is seen from farther off, px. */
const thinning = (width: number): ExpressionSpecification => [
  'interpolate',
  ['linear'],
  ['zoom'],
  14.5,
  width * 0.4,
  17,
  width,
];

/** Crown outlines: weight and dash by what the tree is for. Dash lengths are in line widths. */
const CROWN_LINES = [
  { mark: 'nut', width: 2.4, dash: null },
  { mark: 'fruit', width: 1.3, dash: null },
  { mark: 'nurse', width: 1.3, dash: [3, 2] },
  { mark: 'other', width: 1.3, dash: [6, 1.6, 1, 1.6] },
] as const;

/** The plan itself, as a draughtsman inks it, from what lies lowest up. */
export function planLayers(theme: InkTheme): LayerSpecification[] {
  const wood = theme.dark ? '#5e9077' : '#1f4a39';
  return [
    ...waysAndAreas(theme),
    ...woods(theme, wood),
    ...solids(theme),
    ...trees(theme),
    ...selection(theme),
  ];
}

function waysAndAreas(theme: InkTheme): LayerSpecification[] {
  return [
    {
      id: 'keep-out-cover',
      type: 'fill',
      source: 'outlines',
      filter: all(kindIs('keepOut'), shape('Polygon')),
      paint: { 'fill-pattern': 'keep-free' },
    },
    {
      id: 'keep-out-line',
      type: 'line',
      source: 'outlines',
      filter: kindIs('keepOut'),
      paint: { 'line-color': theme.clay, 'line-width': 1.4, 'line-dasharray': [5, 2] },
    },
    {
      id: 'path-cover',
      type: 'fill',
      source: 'outlines',
      filter: all(kindIs('path'), shape('Polygon')),
      paint: { 'fill-color': theme.sheet, 'fill-opacity': 0.8 },
    },
    {
      id: 'path-sides',
      type: 'line',
      source: 'outlines',
      filter: kindIs('path'),
      layout: { 'line-cap': 'butt', 'line-join': 'round' },
      paint: { 'line-color': theme.inkSoft, 'line-width': 5 },
    },
    {
      id: 'path-bed',
      type: 'line',
      source: 'outlines',
      filter: kindIs('path'),
      layout: { 'line-cap': 'butt', 'line-join': 'round' },
      paint: { 'line-color': theme.sheet, 'line-width': 3.4 },
    },
    {
      id: 'field-line-under',
      type: 'line',
      source: 'outlines',
      filter: kindIs('field'),
      paint: { 'line-color': theme.paper, 'line-width': 4, 'line-opacity': 0.55 },
    },
    {
      id: 'field-line',
      type: 'line',
      source: 'outlines',
      filter: all(kindIs('field'), ['!', ['get', 'taken']]),
      paint: { 'line-color': theme.ink, 'line-width': 1.2, 'line-dasharray': [6, 4] },
    },
    {
      id: 'field-line-taken',
      type: 'line',
      source: 'outlines',
      filter: all(kindIs('field'), is('taken', true)),
      paint: { 'line-color': theme.ink, 'line-width': 2.2, 'line-dasharray': [5, 2.4] },
    },
    {
      id: 'planting-cover',
      type: 'fill',
      source: 'outlines',
      filter: all(kindIs('planting'), shape('Polygon')),
      paint: { 'fill-pattern': 'stipple' },
    },
    {
      id: 'planting-line',
      type: 'line',
      source: 'outlines',
      filter: all(kindIs('planting'), shape('LineString')),
      layout: { 'line-cap': 'round' },
      paint: { 'line-color': theme.leaf, 'line-width': 4.5, 'line-dasharray': [0.01, 2.2] },
    },
    {
      id: 'patch-cover',
      type: 'fill',
      source: 'outlines',
      filter: kindIs('patch'),
      paint: { 'fill-color': theme.sheet, 'fill-opacity': 0.08 },
    },
    {
      id: 'patch-line-under',
      type: 'line',
      source: 'outlines',
      filter: kindIs('patch'),
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: {
        'line-color': theme.paper,
        'line-width': thinning(4),
        'line-opacity': 0.6,
        'line-dasharray': [0.01, 1.75],
      },
    },
    {
      id: 'patch-line',
      type: 'line',
      source: 'outlines',
      filter: kindIs('patch'),
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: { 'line-color': theme.ink, 'line-width': thinning(2.2), 'line-dasharray': [0.01, 3.18] },
    },
    {
      id: 'service-line',
      type: 'line',
      source: 'outlines',
      filter: kindIs('service'),
      paint: { 'line-color': theme.water, 'line-width': 1.6, 'line-dasharray': [7, 2, 1, 2, 1, 2] },
    },
  ];
}

/** Belts and blocks: a dark band whose edge fades, clear-edged and lighter while it is only planned. */
function woods(theme: InkTheme, wood: string): LayerSpecification[] {
  const standing = is('status', 'existing');
  const planned = is('status', 'planned');
  return [
    {
      id: 'belt-axis-waiting',
      type: 'line',
      source: 'outlines',
      filter: all(kindIs('belt', 'wall'), is('standing', false)),
      layout: { 'line-cap': 'round' },
      paint: { 'line-color': theme.inkSoft, 'line-width': 1.6, 'line-dasharray': [0.01, 2.4] },
    },
    {
      id: 'wood-waiting',
      type: 'line',
      source: 'outlines',
      filter: all(kindIs('block', 'building'), is('standing', false)),
      layout: { 'line-cap': 'round' },
      paint: { 'line-color': theme.inkSoft, 'line-width': 1.6, 'line-dasharray': [0.01, 2.4] },
    },
    {
      id: 'wood-soft-edge',
      type: 'line',
      source: 'stands',
      filter: kindIs('belt', 'block'),
      layout: { 'line-join': 'round' },
      paint: {
        'line-color': wood,
        'line-width': ['interpolate', ['exponential', 2], ['zoom'], 15, 4, 20, 40],
        'line-blur': ['interpolate', ['exponential', 2], ['zoom'], 15, 4, 20, 40],
        'line-opacity': ['case', standing, 0.75, 0.35],
      },
    },
    {
      id: 'belt-cover',
      type: 'fill',
      source: 'stands',
      filter: kindIs('belt'),
      paint: { 'fill-color': wood, 'fill-opacity': ['case', standing, 0.72, 0.34], 'fill-antialias': false },
    },
    {
      id: 'block-cover',
      type: 'fill',
      source: 'stands',
      filter: kindIs('block'),
      paint: { 'fill-color': wood, 'fill-opacity': ['case', standing, 0.62, 0.3], 'fill-antialias': false },
    },
    {
      id: 'block-canopy',
      type: 'fill',
      source: 'stands',
      filter: kindIs('block'),
      paint: { 'fill-pattern': 'canopy', 'fill-antialias': false },
    },
    {
      id: 'wood-planned-edge',
      type: 'line',
      source: 'stands',
      filter: all(kindIs('belt', 'block'), planned),
      paint: { 'line-color': theme.ink, 'line-width': 1.1, 'line-dasharray': [4, 3] },
    },
  ];
}

function solids(theme: InkTheme): LayerSpecification[] {
  return [
    {
      id: 'building-cover',
      type: 'fill',
      source: 'stands',
      filter: kindIs('building'),
      paint: { 'fill-color': theme.dark ? '#c9cfc8' : '#35413d' },
    },
    {
      id: 'building-line',
      type: 'line',
      source: 'stands',
      filter: kindIs('building'),
      paint: { 'line-color': theme.ink, 'line-width': 1.6 },
    },
    {
      id: 'wall-under',
      type: 'line',
      source: 'outlines',
      filter: all(kindIs('wall'), is('standing', true)),
      paint: { 'line-color': theme.paper, 'line-width': 6, 'line-opacity': 0.7 },
    },
    {
      id: 'wall-solid',
      type: 'line',
      source: 'outlines',
      filter: all(kindIs('wall'), is('standing', true), ['!', ['get', 'open']]),
      layout: { 'line-cap': 'square' },
      paint: { 'line-color': theme.ink, 'line-width': 3.4 },
    },
    {
      id: 'wall-open',
      type: 'line',
      source: 'outlines',
      filter: all(kindIs('wall'), is('standing', true), is('open', true)),
      paint: { 'line-color': theme.ink, 'line-width': 3.4, 'line-dasharray': [0.5, 0.9] },
    },
  ];
}

function trees(theme: InkTheme): LayerSpecification[] {
  const layers: LayerSpecification[] = [
    {
      id: 'crown-cover',
      type: 'fill',
      source: 'crowns',
      paint: { 'fill-color': theme.sheet, 'fill-opacity': 0.22 },
    },
    {
      id: 'crown-line-under',
      type: 'line',
      source: 'crowns',
      paint: {
        'line-color': theme.paper,
        'line-width': thinning(3.6),
        'line-opacity': 0.6,
      },
    },
  ];
  for (const { mark, width, dash } of CROWN_LINES) {
    layers.push({
      id: `crown-line-${mark}`,
      type: 'line',
      source: 'crowns',
      filter: is('mark', mark),
      paint: {
        'line-color': theme.ink,
        'line-width': thinning(width),
        ...(dash ? { 'line-dasharray': [...dash] } : {}),
      },
    });
  }
  return layers;
}

function selection(theme: InkTheme): LayerSpecification[] {
  return [
    {
      id: 'selected-under',
      type: 'line',
      source: 'selected',
      layout: { 'line-join': 'round', 'line-cap': 'round' },
      paint: { 'line-color': theme.sheet, 'line-width': 8, 'line-opacity': 0.95 },
    },
    {
      id: 'selected-line',
      type: 'line',
      source: 'selected',
      layout: { 'line-join': 'round', 'line-cap': 'round' },
      paint: { 'line-color': theme.leaf, 'line-width': 4 },
    },
    {
      id: 'selected-spot',
      type: 'circle',
      source: 'selected',
      filter: shape('Point'),
      paint: {
        'circle-radius': 13,
        'circle-color': theme.sheet,
        'circle-opacity': 0.5,
        'circle-stroke-color': theme.leaf,
        'circle-stroke-width': 3.5,
      },
    },
  ];
}
