import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import type { LonLat } from '../geo/frame.ts';
import { openBelts, shownWay } from '../state/proposed-belts.ts';
import { useApp } from '../state/store.ts';
import type { Bounds } from './site-bounds.ts';
import { showBox } from './use-fit-to-site.ts';
import { setFeatures } from './use-plan.ts';

/** Draws the belts that are proposed, while shelter is looked at. */
export function useProposals(map: MapLibre | null): void {
  const proposals = useApp((app) => app.proposals);
  const proposing = useApp((app) => app.proposing);
  const shown = useApp((app) => app.step === 'shelter');
  const way = useApp(shownWay);
  useEffect(() => {
    if (map && way && shown) showBox(map, boundsOf(way.belts.flatMap(({ line }) => line)), true);
  }, [map, way, shown]);
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

/** Ground shown round the belts, as a share of their extent: what they shelter is to be seen too. */
const ABOUT_SHARE = 0.6;

function boundsOf(places: readonly LonLat[]): Bounds {
  const range = (values: readonly number[]): [number, number] => {
    const [least, most] = [Math.min(...values), Math.max(...values)];
    const about = (most - least) * ABOUT_SHARE;
    return [least - about, most + about];
  };
  const [west, east] = range(places.map(([lon]) => lon));
  const [south, north] = range(places.map(([, lat]) => lat));
  return [
    [west, south],
    [east, north],
  ];
}
