import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import {
  type GeoJSONStoreFeatures,
  TerraDraw,
  TerraDrawLineStringMode,
  TerraDrawPolygonMode,
  TerraDrawSelectMode,
} from 'terra-draw';
import { TerraDrawMapLibreGLAdapter } from 'terra-draw-maplibre-gl-adapter';
import type { FeatureId, SiteFeature } from '../../site/document.ts';
import { appStore, useApp } from '../../state/store.ts';
import type { InkTheme } from '../ink-theme.ts';
import { calledIn, featureOf, previewShape } from './hand-actions.ts';

/** A tenth of a millimetre: what terra-draw keeps of a coordinate. */
const DECIMALS = 9;

/**
 * Handles on the corners and sides of the one feature that is being reshaped. Only that feature is ever loaded:
 * terra-draw's time an edit grows with all it holds.
 */
export function useReshaping(map: MapLibre | null, theme: InkTheme): void {
  const id = useApp((app) => (app.hand.doing === 'reshaping' ? app.hand.id : null));
  useEffect(() => {
    if (!map || id === null) return;
    return reshape(map, id, theme);
  }, [map, id, theme]);
}

const MODES = { LineString: 'linestring', Polygon: 'polygon' } as const;

const rounded = (coordinates: unknown): unknown =>
  Array.isArray(coordinates)
    ? coordinates.length > 0 && typeof coordinates[0] === 'number'
      ? coordinates.slice(0, 2).map((value: number) => Number(value.toFixed(DECIMALS)))
      : coordinates.map(rounded)
    : coordinates;

const shapeOf = (feature: SiteFeature): GeoJSONStoreFeatures['geometry'] =>
  ({
    type: feature.geometry.type,
    coordinates: rounded(feature.geometry.coordinates),
  }) as GeoJSONStoreFeatures['geometry'];

function reshape(map: MapLibre, id: FeatureId, theme: InkTheme): () => void {
  const feature = featureOf(id);
  if (!feature || feature.geometry.type === 'Point') return () => {};
  const flags = {
    feature: {
      draggable: false,
      selfIntersectable: false,
      coordinates: { draggable: true, deletable: true, midpoints: { draggable: true } },
    },
  };
  const hex = (ink: string) => ink as `#${string}`;
  const draw = new TerraDraw({
    adapter: new TerraDrawMapLibreGLAdapter({ map, coordinatePrecision: DECIMALS }),
    modes: [
      new TerraDrawLineStringMode(),
      new TerraDrawPolygonMode(),
      new TerraDrawSelectMode({
        flags: { linestring: flags, polygon: flags },
        allowManualDeselection: false,
        pointerDistance: 24,
        keyEvents: null,
        styles: {
          selectedLineStringColor: hex(theme.leaf),
          selectedLineStringWidth: 2,
          selectedPolygonColor: hex(theme.leaf),
          selectedPolygonFillOpacity: 0.08,
          selectedPolygonOutlineColor: hex(theme.leaf),
          selectedPolygonOutlineWidth: 2,
          selectionPointColor: hex(theme.sheet),
          selectionPointWidth: 7,
          selectionPointOutlineColor: hex(theme.leaf),
          selectionPointOutlineWidth: 2.5,
          midPointColor: hex(theme.leaf),
          midPointWidth: 4,
          midPointOutlineColor: hex(theme.sheet),
          midPointOutlineWidth: 1.5,
        },
      }),
    ],
  });
  draw.start();
  const [added] = draw.addFeatures([
    {
      type: 'Feature',
      geometry: shapeOf(feature),
      properties: { mode: MODES[feature.geometry.type] },
    },
  ]);
  const drawId = added.id;
  if (!added.valid || drawId === undefined) {
    draw.stop();
    return () => {};
  }
  draw.selectFeature(drawId);

  let ownChange = false;
  draw.on('change', (ids, type, context) => {
    const byHand = !context || !('origin' in context);
    if (type !== 'update' || !byHand || !ids.includes(drawId)) return;
    const shape = draw.getSnapshotFeature(drawId)?.geometry;
    if (!shape || shape.type === 'Point') return;
    ownChange = true;
    previewShape(id, shape as SiteFeature['geometry']);
    ownChange = false;
  });
  draw.on('finish', () => {
    const changed = featureOf(id);
    if (changed) appStore.getState().commitGesture(`Reshape ${calledIn(changed)}`);
  });
  // Keys, undo and the panels change the same feature: the handles follow.
  const unsubscribe = appStore.subscribe((now, before) => {
    if (ownChange || now.document === before.document) return;
    const changed = featureOf(id);
    if (changed && changed.geometry.type === feature.geometry.type && draw.hasFeature(drawId))
      draw.updateFeatureGeometry(drawId, shapeOf(changed));
  });
  return () => {
    unsubscribe();
    if (map.style && draw.enabled) draw.stop();
  };
}
