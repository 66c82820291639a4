import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useMemo } from 'react';
import { openBelts, shownWay } from '../state/proposed-belts.ts';
import { useApp } from '../state/store.ts';
import { setFeatures } from './use-plan.ts';
import { useShowOpened } from './use-show-opened.ts';

/** Ground shown round the belts, as a share of their extent: what they shelter is to be seen too. */
const ABOUT_SHARE = 0.6;

/** Draws the belts that are proposed, while shelter is looked at. */
export function useProposals(map: MapLibre | null): void {
  const proposals = useApp((app) => app.proposals);
  const proposing = useApp((app) => app.proposing);
  const shown = useApp((app) => app.step === 'shelter');
  const way = useApp((app) => (app.step === 'shelter' ? shownWay(app) : null));
  const places = useMemo(() => way?.belts.flatMap(({ line }) => line) ?? null, [way]);
  useShowOpened(map, way, places, ABOUT_SHARE);
  useEffect(() => {
    if (!map) return;
    const belts = shown ? openBelts({ proposals, proposing }) : [];
    const features = belts.flatMap(({ letter, line }): GeoJSON.Feature[] => {
      const properties = { letter, pointed: letter === proposing.pointedLetter };
      const places = line.map(([lon, lat]) => [lon, lat]);
      const i = Math.floor((places.length - 1) / 2);
      const [a, b] = [places[i], places[i + 1]];
      const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      return [
        { type: 'Feature', properties, geometry: { type: 'LineString', coordinates: places } },
        { type: 'Feature', properties, geometry: { type: 'Point', coordinates: middle } },
      ];
    });
    setFeatures(map, 'proposals', { type: 'FeatureCollection', features });
  }, [map, proposals, proposing, shown]);
}
