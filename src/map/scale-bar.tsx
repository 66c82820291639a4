import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useState } from 'react';
import { useApp } from '../state/store.ts';
import { metresPerPixel, scaleLength } from './scale-length.ts';
import './scale-bar.css';

/** Ground metres a pixel spans in the middle of the map; changes as the map is moved. */
function useMetresPerPixel(map: MapLibre | null): number | null {
  const [scale, setScale] = useState<number | null>(null);
  useEffect(() => {
    if (!map) return;
    const read = () => setScale(metresPerPixel(map.getCenter().lat, map.getZoom()));
    read();
    map.on('move', read);
    return () => {
      map.off('move', read);
    };
  }, [map]);
  return scale;
}

/** A bar that is true at the latitude in the middle of the map. */
export function ScaleBar({ map }: { readonly map: MapLibre | null }) {
  const units = useApp((app) => app.unitSystem);
  const metresPerPx = useMetresPerPixel(map);
  if (metresPerPx === null) return null;
  const { lengthPx, label } = scaleLength(metresPerPx, 140, units);
  return (
    <div
      className="map-scale"
      data-testid="scale-bar"
      role="img"
      aria-label={`Scale: the bar is ${label} long`}
    >
      <svg width={lengthPx + 2} height="30" aria-hidden="true">
        <text x="1" y="12">
          0
        </text>
        <text x={lengthPx + 1} y="12" textAnchor="end">
          {label}
        </text>
        <path d={`M1 18v8h${lengthPx}v-8M${1 + lengthPx / 2} 22v4`} />
      </svg>
    </div>
  );
}
