import type { LayerSpecification, SymbolLayerSpecification } from 'maplibre-gl';
import type { InkTheme } from './ink-theme.ts';
import { all, is, kindIs } from './layer-filters.ts';
import { FACE, TEXT_PX } from './lettering.ts';

/** From the first zoom tags are written where there is room, from the second every one, over each other or not. */
const SOME_TAGS_FROM_ZOOM = 16;
const ALL_TAGS_FROM_ZOOM = 17.7;
/** Names of patches and other areas, and stems: on a smaller sheet they would only be soot. */
const NAMES_FROM_ZOOM = 15.7;

interface Halo {
  readonly 'text-color': string;
  readonly 'text-halo-color': string;
  readonly 'text-halo-width': number;
}

/** Names, stems and numbers, over everything that is drawn. */
export function letteringLayers(theme: InkTheme): LayerSpecification[] {
  const halo: Halo = { 'text-color': theme.ink, 'text-halo-color': theme.paper, 'text-halo-width': 1.8 };
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
  ];
}

/** The number of a tree above its stem. */
function tags(halo: Halo, everyOne = false): Omit<SymbolLayerSpecification, 'id'> {
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
