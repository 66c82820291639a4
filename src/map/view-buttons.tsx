import type { Map as MapLibre } from 'maplibre-gl';
import { useApp } from '../state/store.ts';
import { motionReduced } from './use-fit-to-site.ts';
import './view-buttons.css';

interface ViewButtonsProps {
  readonly map: MapLibre | null;
  readonly showSite: () => void;
  readonly showField: () => void;
}

/** Nearer, farther, and back to the whole, for a hand that has neither wheel nor second finger. */
export function ViewButtons({ map, showSite, showField }: ViewButtonsProps) {
  const taken = useApp((app) =>
    app.document.features.some(({ properties }) => properties.kind === 'field' && properties.taken),
  );
  const zoom = (by: 1 | -1) => map?.easeTo({ zoom: map.getZoom() + by, duration: motionReduced() ? 0 : 180 });
  return (
    <>
      <button type="button" className="map-fit" onClick={showSite} data-testid="map-fit">
        Whole site
      </button>
      {taken && (
        <button
          type="button"
          className="map-fit"
          onClick={showField}
          title="Show the field that is taken"
          data-testid="map-fit-field"
        >
          Field
        </button>
      )}
      <span className="map-zoom">
        <button type="button" onClick={() => zoom(-1)} aria-label="Farther" title="Farther">
          −
        </button>
        <button type="button" onClick={() => zoom(1)} aria-label="Nearer" title="Nearer">
          +
        </button>
      </span>
    </>
  );
}
