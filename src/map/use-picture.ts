import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useMemo } from 'react';
import { type Frame, toLonLat } from '../geo/frame.ts';
import type { PictureRaster } from '../state/picture-raster.ts';
import { useApp } from '../state/store.ts';
import { type BandEdge, bandEdges } from './band-edges.ts';
import { gridCorners, placeInCorners } from './grid-corners.ts';
import type { InkTheme } from './ink-theme.ts';
import { paintBands } from './picture-painter.ts';
import { layPicture } from './raster-source.ts';
import { setFeatures } from './use-plan.ts';

const NOTHING: GeoJSON.FeatureCollection = { type: 'FeatureCollection', features: [] };

/** Lays the picture on the ground in inked bands with thin lines between, hatched if the person wants it so. */
export function usePicture(
  map: MapLibre | null,
  raster: PictureRaster | null,
  theme: InkTheme,
  hatched: boolean,
): void {
  const frame = useApp((app) => app.frame);
  const opacity = theme.dark ? 0.8 : 1;

  useEffect(() => {
    if (!map) return;
    layPicture(
      map,
      { id: 'picture', beforeId: map.getLayer('relief') ? 'relief' : 'band-hatch-1', opacity },
      raster && {
        painted: paintBands(raster.grid, raster.values, raster.bands),
        corners: gridCorners(raster.grid, (xM, yM) => toLonLat(frame, [xM, yM])),
      },
    );
  }, [map, raster, frame, opacity]);

  const edges = useMemo(() => (raster ? bandEdges(raster.grid, raster.values, raster.bands) : []), [raster]);
  useEffect(() => {
    if (map) setFeatures(map, 'band-edges', raster ? edgeLines(edges, raster, frame) : NOTHING);
  }, [map, edges, raster, frame]);
  useEffect(() => {
    if (map) setFeatures(map, 'band-hatch', raster && hatched ? darkSides(edges, raster, frame) : NOTHING);
  }, [map, edges, raster, frame, hatched]);
}

function edgeLines(
  edges: readonly BandEdge[],
  raster: PictureRaster,
  frame: Frame,
): GeoJSON.FeatureCollection {
  const place = placing(raster, frame);
  return {
    type: 'FeatureCollection',
    features: edges.map((edge) => ({
      type: 'Feature',
      properties: { limit: edge.limit },
      geometry: {
        type: 'MultiLineString',
        coordinates: edge.lines.map((line) => line.map(([column, row]) => place(column, row))),
      },
    })),
  };
}

function darkSides(
  edges: readonly BandEdge[],
  raster: PictureRaster,
  frame: Frame,
): GeoJSON.FeatureCollection {
  const place = placing(raster, frame);
  return {
    type: 'FeatureCollection',
    features: edges.map((edge) => ({
      type: 'Feature',
      properties: { depth: edge.depth },
      geometry: {
        type: 'MultiPolygon',
        coordinates: edge.darkSide.map((polygon) =>
          polygon.map((ring) => ring.map(([column, row]) => place(column, row))),
        ),
      },
    })),
  };
}

const placing = (raster: PictureRaster, frame: Frame) =>
  placeInCorners(
    gridCorners(raster.grid, (xM, yM) => toLonLat(frame, [xM, yM])),
    raster.grid,
  );
