import medium from '@expo-google-fonts/atkinson-hyperlegible-next/500Medium/AtkinsonHyperlegibleNext_500Medium.ttf?url';
import bold from '@expo-google-fonts/atkinson-hyperlegible-next/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf?url';
import type { LayerSpecification, StyleSpecification } from 'maplibre-gl';
import { cutsLayers } from './cuts-layers.ts';
import { fallLayers } from './fall-layers.ts';
import { groundLayers } from './ground-layers.ts';
import type { InkTheme } from './ink-theme.ts';
import { letteringLayers } from './lettering-layers.ts';
import { planLayers } from './plan-layers.ts';
import { proposalLayers } from './proposal-layers.ts';
import { sketchLayers } from './sketch-layers.ts';
import { stakesLayers } from './stakes-layers.ts';

/** Sources that hold GeoJSON, all empty at first. */
export const GEOJSON_SOURCES = [
  'contours',
  'band-edges',
  'band-hatch',
  'inked-lines',
  'cold-flow',
  'outlines',
  'stands',
  'crowns',
  'points',
  'names',
  'fall',
  'selected',
  'proposals',
  'cuts',
  'stakes',
  'sketch',
] as const;
export type GeojsonSourceName = (typeof GEOJSON_SOURCES)[number];

/** All layers of the drawing in order, from the paper up. */
export const drawingLayers = (theme: InkTheme): LayerSpecification[] => [
  ...groundLayers(theme),
  ...fallLayers(theme),
  ...planLayers(theme),
  ...letteringLayers(theme),
  ...proposalLayers(theme),
  ...cutsLayers(theme),
  ...stakesLayers(theme),
  ...sketchLayers(theme),
];

/** A blank sheet: no tiles, no glyph server, labels in the bundled typeface. */
export function paperStyle(theme: InkTheme): StyleSpecification {
  const absolute = (url: string) => new URL(url, location.href).href;
  return {
    version: 8,
    'font-faces': { 'Leeglade Medium': absolute(medium), 'Leeglade Bold': absolute(bold) },
    transition: { duration: 0, delay: 0 },
    sources: Object.fromEntries(
      GEOJSON_SOURCES.map((name) => [
        name,
        {
          type: 'geojson',
          data: { type: 'FeatureCollection', features: [] },
          // Fine enough that a crown's outline keeps its centimetres when looked at closely.
          maxzoom: 20,
          tolerance: 0.1,
          buffer: 64,
        },
      ]),
    ),
    layers: drawingLayers(theme),
  };
}
