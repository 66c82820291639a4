import type { ExpressionSpecification, LayerSpecification, SymbolLayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { FACE, TEXT_PX } from './lettering.ts';

type Filter = ExpressionSpecification;
const kindIs = (...kinds: string[]): Filter => ['in', ['get', 'kind'], ['literal', kinds]];
const all = (...filters: Filter[]): Filter => ['all', ...filters];
const is = (property: string, value: string | boolean): Filter => ['==', ['get', property], value];
const shape = (type: 'Polygon' | 'LineString' | 'Point'): Filter => ['==', ['geometry-type'], type];

/** From the first zoom tags are written where there is room, from the second every one, over each other or not. */
const SOME_TAGS_FROM_ZOOM = 16;
const ALL_TAGS_FROM_ZOOM = 17.7;
/** Names of patches and other areas, and stems: on a smaller sheet they would only be soot. */
const NAMES_FROM_ZOOM = 15.7;

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
  const halo = { 'text-color': theme.ink, 'text-halo-color': theme.paper, 'text-halo-width': 1.8 } as const;
  return [
    ...waysAndAreas(theme),
    ...woods(theme, wood),
    ...solids(theme),
    ...trees(theme),
    ...selection(theme),
    ...lettering(theme, halo),
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

function lettering(
  theme: InkTheme,
  halo: { 'text-color': string; 'text-halo-color': string; 'text-halo-width': number },
): LayerSpecification[] {
  return [
    {
      id: 'line-names',
      type: 'symbol',
      source: 'names',
      minzoom: 15.5,
      filter: is('along', 'LineString'),
      layout: {
        'text-field': ['get', 'label'],
        'text-font': [FACE.medium],
        'text-size': TEXT_PX.small,
        'text-rotate': ['get', 'turnDeg'],
        'text-rotation-alignment': 'map',
        'text-max-width': 30,
      },
      paint: halo,
    },
    {
      id: 'area-names',
      type: 'symbol',
      source: 'names',
      minzoom: NAMES_FROM_ZOOM,
      filter: all(is('along', 'Polygon'), ['!', kindIs('field')]),
      layout: {
        'text-field': ['get', 'label'],
        'text-font': [FACE.medium],
        'text-size': TEXT_PX.small,
        'text-max-width': 8,
        'text-variable-anchor': ['center', 'top', 'bottom'],
        'text-radial-offset': 0.4,
      },
      paint: halo,
    },
    {
      id: 'field-names',
      type: 'symbol',
      source: 'names',
      filter: kindIs('field'),
      layout: {
        'text-field': ['get', 'label'],
        'text-font': [FACE.bold],
        'text-size': TEXT_PX.usual,
        'text-letter-spacing': 0.04,
        'text-anchor': 'bottom',
        'text-offset': [0, -0.3],
        'text-rotate': ['get', 'turnDeg'],
        'text-rotation-alignment': 'map',
        'text-max-width': 30,
        'text-allow-overlap': true,
      },
      paint: halo,
    },
    {
      // What already stands has a filled stem, what is planned a small cross where the stake will go.
      id: 'stems',
      type: 'symbol',
      source: 'points',
      minzoom: NAMES_FROM_ZOOM,
      filter: kindIs('tree'),
      layout: {
        'icon-image': [
          'case',
          ['!', ['get', 'standing']],
          'stem-waiting',
          is('status', 'planned'),
          'stem-planned',
          'stem-existing',
        ],
        'icon-allow-overlap': true,
        'icon-ignore-placement': true,
        'icon-size': ['interpolate', ['linear'], ['zoom'], 15.5, 0.4, 18, 1],
      },
    },
    {
      id: 'readings',
      type: 'symbol',
      source: 'points',
      minzoom: NAMES_FROM_ZOOM,
      filter: ['!', kindIs('tree')],
      layout: {
        'icon-image': ['match', ['get', 'kind'], 'measure', 'reading', 'plant'],
        'icon-allow-overlap': true,
        'icon-ignore-placement': true,
        // Written only where the sheet is large enough to read the plan itself.
        'text-field': ['step', ['zoom'], '', 17, ['get', 'name']],
        'text-font': [FACE.medium],
        'text-size': TEXT_PX.small,
        'text-offset': [0, 0.8],
        'text-anchor': 'top',
        'text-optional': true,
      },
      paint: halo,
    },
    {
      ...tags(halo),
      id: 'tags-some',
      minzoom: SOME_TAGS_FROM_ZOOM,
      maxzoom: ALL_TAGS_FROM_ZOOM,
    },
    { ...tags(halo, true), id: 'tags', minzoom: ALL_TAGS_FROM_ZOOM },
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

/** The number of a tree above its stem. */
function tags(
  halo: { 'text-color': string; 'text-halo-color': string; 'text-halo-width': number },
  everyOne = false,
): Omit<SymbolLayerSpecification, 'id'> {
  return {
    type: 'symbol',
    source: 'points',
    filter: all(kindIs('tree'), ['!=', ['get', 'tag'], '']),
    layout: {
      'text-field': ['get', 'tag'],
      'text-font': [FACE.bold],
      'text-size': TEXT_PX.small,
      'text-anchor': 'bottom',
      'text-offset': [0, -0.25],
      'text-padding': 0,
      // Where there is not room for all, the large trees come first.
      'symbol-sort-key': ['match', ['get', 'mark'], 'nut', 0, 'fruit', 1, 2],
      'text-allow-overlap': everyOne,
    },
    paint: { ...halo, 'text-opacity': ['case', ['get', 'standing'], 1, 0.6] },
  };
}
