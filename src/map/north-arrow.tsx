import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useState } from 'react';
import { northTurnDeg } from './scale-length.ts';
import { motionReduced } from './use-fit-to-site.ts';
import './north-arrow.css';

/** Points to true north, however the map is turned; a press turns the map back. */
export function NorthArrow({ map }: { readonly map: MapLibre | null }) {
  const [bearingDeg, setBearingDeg] = useState(0);
  useEffect(() => {
    if (!map) return;
    const read = () => setBearingDeg(map.getBearing());
    read();
    map.on('rotate', read);
    return () => {
      map.off('rotate', read);
    };
  }, [map]);
  const turned = Math.abs(bearingDeg) > 0.05;
  return (
    <button
      type="button"
      className="map-north"
      data-testid="north-arrow"
      aria-label={turned ? 'The map is turned. Turn it back so that true north is up' : 'True north is up'}
      title={turned ? 'Turn the map back to true north' : 'True north'}
      onClick={() => map?.easeTo({ bearing: 0, duration: motionReduced() ? 0 : 200 })}
    >
      <svg width="24" height="34" viewBox="0 0 24 34" aria-hidden="true">
        <g transform={`rotate(${northTurnDeg(bearingDeg)} 12 17)`}>
          <path className="half" d="M12 11 L12 29 L6 32 Z" />
          <path d="M12 11 L18 32 L12 29 L6 32 Z" />
          <text x="12" y="9" textAnchor="middle">
            N
          </text>
        </g>
      </svg>
    </button>
  );
}
