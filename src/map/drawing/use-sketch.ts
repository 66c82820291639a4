import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import type { SiteFeature } from '../../site/document.ts';
import { useApp } from '../../state/store.ts';
import { setFeatures } from '../use-plan.ts';
import { cornersOf } from './corners.ts';
import { placeInHand } from './hand-actions.ts';
import { handStore, useHandState } from './hand-store.ts';
import { emptySketch, sketchFeatures } from './sketch.ts';

const spots = (
  places: readonly (readonly [number, number])[],
  numbered: boolean,
): GeoJSON.FeatureCollection => ({
  type: 'FeatureCollection',
  features: places.map(([lon, lat], index) => ({
    type: 'Feature',
    properties: numbered ? { number: String(index + 1) } : {},
    geometry: { type: 'Point', coordinates: [lon, lat] },
  })),
});

/** Begins a sketch when drawing is asked for, and draws what is in hand: a sketch, given points, a chosen corner. */
export function useSketch(map: MapLibre | null): void {
  const hand = useApp((app) => app.hand);
  const pointed = useApp((app) => app.pointed);
  const held = useApp((app): SiteFeature | null =>
    app.hand.doing === 'reshaping'
      ? (app.document.features.find(({ id }) => id === reshaped(app.hand)) ?? null)
      : null,
  );
  const sketch = useHandState((state) => state.sketch);
  const corner = useHandState((state) => state.corner);

  useEffect(() => {
    if (!map) return;
    const { lng, lat } = map.getCenter();
    const drawing = hand.doing === 'drawing';
    handStore.setState({
      sketch: drawing ? emptySketch(hand.geometry, placeInHand([lng, lat])) : null,
      ...(hand.doing === 'moving' ? { moved: { eastM: 0, northM: 0 } } : {}),
      ...(hand.doing === 'reshaping' ? { corner: 0 } : {}),
    });
    map.getCanvas().style.cursor = drawing || hand.doing === 'pointing' ? 'crosshair' : '';
  }, [map, hand]);

  useEffect(() => {
    if (!map) return;
    if (sketch) setFeatures(map, 'sketch', sketchFeatures(sketch));
    else if (hand.doing === 'pointing') setFeatures(map, 'sketch', spots(pointed?.points ?? [], true));
    else if (held) {
      const corners = cornersOf(held.geometry);
      setFeatures(map, 'sketch', spots([corners[Math.min(corner, corners.length - 1)]], false));
    } else setFeatures(map, 'sketch', spots([], false));
  }, [map, sketch, hand, pointed, held, corner]);
}

const reshaped = (hand: { readonly doing: string; readonly id?: unknown }) => hand.id;
