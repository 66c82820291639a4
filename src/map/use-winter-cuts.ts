import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useMemo } from 'react';
import type { LonLat } from '../geo/frame.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { featureById } from '../site/find-feature.ts';
import { useApp } from '../state/store.ts';
import { openCuts, shownCutWay } from '../state/winter-cuts.ts';
import { setFeatures } from './use-plan.ts';
import { useShowOpened } from './use-show-opened.ts';

/** Ground shown round the plants, as a share of their extent: the patches they darken are to be seen too. */
const ABOUT_SHARE = 0.5;

/** Marks the plants that are proposed to be cut, while light is looked at. */
export function useWinterCuts(map: MapLibre | null): void {
  const document = useApp((app) => app.document);
  const winterCuts = useApp((app) => app.winterCuts);
  const cutting = useApp((app) => app.cutting);
  const shown = useApp((app) => app.step === 'light');
  const way = useApp((app) => (app.step === 'light' ? shownCutWay(app) : null));
  const places = useMemo(
    () =>
      way?.cuts.flatMap(({ plant }): LonLat[] => {
        const place = placeOf(document, plant.id);
        return place ? [place] : [];
      }) ?? null,
    [way, document],
  );
  useShowOpened(map, way, places && places.length > 1 ? places : null, ABOUT_SHARE);
  useEffect(() => {
    if (!map) return;
    const cuts = shown ? openCuts({ winterCuts, cutting }, document.features) : [];
    const features = cuts.flatMap(({ letter, plant }): GeoJSON.Feature[] => {
      const place = placeOf(document, plant.id);
      if (!place) return [];
      const properties = { letter, pointed: letter === cutting.pointedLetter };
      return [{ type: 'Feature', properties, geometry: { type: 'Point', coordinates: [...place] } }];
    });
    setFeatures(map, 'cuts', { type: 'FeatureCollection', features });
  }, [map, document, winterCuts, cutting, shown]);
}

/** Where a plant is marked: a tree at its stem, a belt at its middle, a wood at the middle of its corners; null: it is gone. */
function placeOf(document: SiteDocument, id: FeatureId): LonLat | null {
  if (!document.features.some((feature) => feature.id === id)) return null;
  const { geometry } = featureById(document, id);
  if (geometry.type === 'Point') return [geometry.coordinates[0], geometry.coordinates[1]];
  const line = (
    geometry.type === 'LineString' ? geometry.coordinates : geometry.coordinates[0]
  ) as number[][];
  if (geometry.type === 'LineString') {
    const i = Math.floor((line.length - 1) / 2);
    return [(line[i][0] + line[i + 1][0]) / 2, (line[i][1] + line[i + 1][1]) / 2];
  }
  const corners = line.slice(1);
  const mean = (axis: number) => corners.reduce((sum, corner) => sum + corner[axis], 0) / corners.length;
  return [mean(0), mean(1)];
}
