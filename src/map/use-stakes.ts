import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useMemo } from 'react';
import type { LonLat } from '../geo/frame.ts';
import { type StakesAnswer, stakesAnswer } from '../state/shadow-stakes.ts';
import { useApp } from '../state/store.ts';
import { type WindSpotsAnswer, windSpotsAnswer } from '../state/wind-spots.ts';
import { setFeatures } from './use-plan.ts';
import { useShowOpened } from './use-show-opened.ts';

/** Ground shown round the stakes, as a share of their extent: their times stand beside them, and signs lie over the edges. */
const ABOUT_SHARE = 0.16;

/** What is taped outside, whichever question it belongs to. */
interface Taped {
  /** Changes when those of another thing, day or wind are opened. */
  readonly opened: string;
  readonly line: NonNullable<StakesAnswer['plan']>['line'];
  readonly places: readonly {
    readonly label: string;
    readonly lonLat: LonLat;
    readonly foot: LonLat;
    /** Where the line that leads to it begins: a stem, under what casts the tip, or where the wind crosses a belt. */
    readonly root: LonLat;
  }[];
  /** Where the other meter stands. */
  readonly open: LonLat | null;
}

function tapedStakes({ thing, date, line, stakes }: NonNullable<StakesAnswer['plan']>): Taped {
  return {
    opened: `${thing.id} ${date}`,
    line,
    places: stakes.map(({ time, lonLat, foot, castOver }) => ({
      label: time,
      lonLat,
      foot,
      root: thing.kind === 'tree' ? thing.middle : castOver,
    })),
    open: null,
  };
}

const tapedSpots = ({ belt, wind, line, spots, open }: NonNullable<WindSpotsAnswer['plan']>): Taped => ({
  opened: `${belt.id} ${wind.fromDeg} ${spots.map(({ lonLat }) => lonLat).join(' ')}`,
  line,
  places: spots.map(({ distanceH, lonLat, foot, crossing }) => ({
    label: `${Number(distanceH.toFixed(1))} H`,
    lonLat,
    foot,
    root: crossing,
  })),
  open: open?.lonLat ?? null,
});

/** Draws the open shadow stakes or wind spots, and shows all of them when those of another thing are opened. */
export function useStakes(map: MapLibre | null): void {
  const stakes = useApp((app) => stakesAnswer(app)?.plan ?? null);
  const spots = useApp((app) => windSpotsAnswer(app)?.plan ?? null);
  const taped = useMemo(
    () => (stakes ? tapedStakes(stakes) : spots ? tapedSpots(spots) : null),
    [stakes, spots],
  );
  useEffect(() => {
    if (map) setFeatures(map, 'stakes', drawn(taped));
  }, [map, taped]);
  const places = useMemo(
    () => taped && [taped.line.a.lonLat, taped.line.b.lonLat, ...taped.places.map(({ lonLat }) => lonLat)],
    [taped],
  );
  useShowOpened(map, taped?.opened ?? null, places, ABOUT_SHARE);
}

const asLine = (from: LonLat, to: LonLat) => ({
  type: 'LineString' as const,
  coordinates: [[...from], [...to]],
});
const asPoint = (at: LonLat) => ({ type: 'Point' as const, coordinates: [...at] });

/** What is taped as what the map draws. */
function drawn(taped: Taped | null): GeoJSON.FeatureCollection {
  if (!taped) return { type: 'FeatureCollection', features: [] };
  const { a, b } = taped.line;
  const feature = (what: string, geometry: GeoJSON.Geometry, label = ''): GeoJSON.Feature => ({
    type: 'Feature',
    geometry,
    properties: { what, label },
  });
  return {
    type: 'FeatureCollection',
    features: [
      feature('line', asLine(a.lonLat, b.lonLat)),
      ...taped.places.flatMap(({ label, lonLat, foot, root }) => [
        feature('shadow', asLine(root, lonLat)),
        feature('square', asLine(foot, lonLat)),
        feature('stake', asPoint(lonLat), label),
      ]),
      ...(taped.open ? [feature('stake', asPoint(taped.open), 'in the open')] : []),
      feature('end', asPoint(a.lonLat), a.letter),
      feature('end', asPoint(b.lonLat), b.letter),
    ],
  };
}
