import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import { type LocalXY, toLonLat } from '../geo/frame.ts';
import { coldFlows } from '../state/cold-air-found.ts';
import { useApp } from '../state/store.ts';
import { setFeatures } from './use-plan.ts';

/** Metres of line from one arrow to the next, and how long its strokes are. */
const ARROW_EVERY_M = 90;
const ARROW_M = 11;
const SPREAD_RAD = 0.5;
/** Drawn heavier from so much ground on, against the least that is drawn. */
const MUCH = 4;

/** Thin lines with arrows where cold air runs, over its map. */
export function useColdFlow(map: MapLibre | null): void {
  const air = useApp((app) => (app.picture === 'cold-air' ? app.coldAir.result : null));
  const frame = useApp((app) => app.frame);
  useEffect(() => {
    if (!map) return;
    const lines = air ? coldFlows(air) : [];
    const least = lines.reduce((low, { upslopeM2 }) => Math.min(low, upslopeM2), Number.POSITIVE_INFINITY);
    const place = (line: readonly LocalXY[]) => line.map((xy) => [...toLonLat(frame, xy)]);
    setFeatures(map, 'cold-flow', {
      type: 'FeatureCollection',
      features: lines.map(({ line, upslopeM2 }) => ({
        type: 'Feature',
        properties: { much: upslopeM2 >= MUCH * least },
        geometry: {
          type: 'MultiLineString',
          coordinates: [place(line), ...arrowsOn(line).map(place)],
        },
      })),
    });
  }, [map, air, frame]);
}

/** Two strokes each, at even distances along a line, one at its lower end. */
function arrowsOn(line: readonly LocalXY[]): LocalXY[][] {
  const arrows: LocalXY[][] = [];
  let since = 0;
  for (let i = 1; i < line.length; i++) {
    const [ax, ay] = line[i - 1];
    const [bx, by] = line[i];
    since += Math.hypot(bx - ax, by - ay);
    if (since < ARROW_EVERY_M && i < line.length - 1) continue;
    since = 0;
    const back = Math.atan2(ay - by, ax - bx);
    const stroke = (turn: number): LocalXY => [
      bx + ARROW_M * Math.cos(back + turn),
      by + ARROW_M * Math.sin(back + turn),
    ];
    arrows.push([stroke(SPREAD_RAD), [bx, by], stroke(-SPREAD_RAD)]);
  }
  return arrows;
}
