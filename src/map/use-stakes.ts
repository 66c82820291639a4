import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import type { LonLat } from '../geo/frame.ts';
import { type StakesAnswer, stakesAnswer } from '../state/shadow-stakes.ts';
import { useApp } from '../state/store.ts';
import type { Bounds } from './site-bounds.ts';
import { showBox } from './use-fit-to-site.ts';
import { setFeatures } from './use-plan.ts';

type Plan = NonNullable<StakesAnswer['plan']>;

/** Draws the open shadow stakes, and shows all of them when those of another thing or day are opened. */
export function useStakes(map: MapLibre | null): void {
  const plan = useApp((app) => stakesAnswer(app)?.plan ?? null);
  const opened = plan ? `${plan.thing.id} ${plan.date}` : null;
  useEffect(() => {
    if (map) setFeatures(map, 'stakes', drawnStakes(plan));
  }, [map, plan]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other times or another line leave the view where it is
  useEffect(() => {
    if (map && plan) showBox(map, boundsOf(plan), true);
  }, [map, opened]);
}

const asLine = (from: LonLat, to: LonLat) => ({
  type: 'LineString' as const,
  coordinates: [[...from], [...to]],
});
const asPoint = (at: LonLat) => ({ type: 'Point' as const, coordinates: [...at] });

/** The plan of stakes as what the map draws. */
function drawnStakes(plan: Plan | null): GeoJSON.FeatureCollection {
  if (!plan) return { type: 'FeatureCollection', features: [] };
  const { a, b } = plan.line;
  const drawn = (what: string, geometry: GeoJSON.Geometry, label = ''): GeoJSON.Feature => ({
    type: 'Feature',
    geometry,
    properties: { what, label },
  });
  return {
    type: 'FeatureCollection',
    features: [
      drawn('line', asLine(a.lonLat, b.lonLat)),
      ...plan.stakes.flatMap((stake) => [
        drawn('shadow', asLine(rootOf(plan, stake), stake.lonLat)),
        drawn('square', asLine(stake.foot, stake.lonLat)),
        drawn('stake', asPoint(stake.lonLat), stake.time),
      ]),
      drawn('end', asPoint(a.lonLat), a.letter),
      drawn('end', asPoint(b.lonLat), b.letter),
    ],
  };
}

/** Where the shadow's middle line begins: the stem, or under what casts the tip. */
const rootOf = ({ thing }: Plan, { castOver }: Plan['stakes'][number]): LonLat =>
  thing.kind === 'tree' ? thing.middle : castOver;

/** Ground shown round the stakes, as a share of their extent: their times stand beside them, and signs lie over the edges. */
const ABOUT_SHARE = 0.16;

function boundsOf(plan: Plan): Bounds {
  const places = [plan.line.a.lonLat, plan.line.b.lonLat, ...plan.stakes.map(({ lonLat }) => lonLat)];
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
