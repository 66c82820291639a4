import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import { type Frame, toLonLat } from '../geo/frame.ts';
import { levelLines } from '../numeric/level-lines.ts';
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
        painted: paintBands(raster.grid, raster.values, raster.bands, raster.live ? 1 : undefined),
        corners: gridCorners(raster.grid, (xM, yM) => toLonLat(frame, [xM, yM])),
      },
    );
  }, [map, raster, frame, opacity]);

  // The bands come first; their lines follow when the hand that moves a slider has let the map be painted.
  useEffect(() => {
    if (!map) return;
    if (!raster) {
      setFeatures(map, 'band-edges', NOTHING);
      setFeatures(map, 'band-hatch', NOTHING);
      setFeatures(map, 'inked-lines', NOTHING);
      return;
    }
    const timer = setTimeout(() => {
      const edges = edgesOf(raster);
      setFeatures(map, 'band-edges', edgeLines(edges, raster, frame));
      setFeatures(map, 'inked-lines', chosenLines(raster, frame));
      setFeatures(map, 'band-hatch', hatched ? darkSides(edges, raster, frame) : NOTHING);
    }, 30);
    return () => clearTimeout(timer);
  }, [map, raster, frame, hatched]);
}

const known = new WeakMap<PictureRaster, BandEdge[]>();

function edgesOf(raster: PictureRaster): BandEdge[] {
  const edges = known.get(raster) ?? bandEdges(raster.grid, raster.values, raster.bands);
  known.set(raster, edges);
  return edges;
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

function chosenLines(raster: PictureRaster, frame: Frame): GeoJSON.FeatureCollection {
  const place = placing(raster, frame);
  return {
    type: 'FeatureCollection',
    features: raster.lines.map(({ value, label }) => ({
      type: 'Feature',
      properties: { label },
      geometry: {
        type: 'MultiLineString',
        coordinates: levelLines(raster.grid, raster.values, value).map((line) =>
          line.map(([column, row]) => place(column, row)),
        ),
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
