import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect } from 'react';
import { useApp } from '../state/store.ts';
import { useHandState } from './drawing/hand-store.ts';
import { motionReduced } from './use-fit-to-site.ts';
import { useProjected } from './use-projected.ts';
import './cross.css';

/** The cross that keys move, a tap sets, or a panel puts on given coordinates. A mouse shows its own pointer instead. */
export function Cross({ map }: { readonly map: MapLibre | null }) {
  const pointer = useApp((app) => app.pointer);
  const mousePlace = useHandState((hand) => hand.mousePlace);
  const shown = pointer !== mousePlace ? pointer : null;
  const at = useProjected(map, shown);

  useEffect(() => {
    if (!map || !shown) return;
    const { x, y } = map.project([shown[0], shown[1]]);
    const { clientWidth, clientHeight } = map.getContainer();
    if (x < 0 || y < 0 || x > clientWidth || y > clientHeight)
      map.easeTo({ center: [shown[0], shown[1]], duration: motionReduced() ? 0 : 200 });
  }, [map, shown]);

  if (!at) return null;
  return (
    <svg
      className="map-cross"
      data-testid="map-cross"
      width="41"
      height="41"
      viewBox="0 0 41 41"
      style={{ transform: `translate(${at.x - 20.5}px, ${at.y - 20.5}px)` }}
      aria-hidden="true"
    >
      <path className="under" d="M20.5 1v14M20.5 26v14M1 20.5h14M26 20.5h14" />
      <path d="M20.5 1v14M20.5 26v14M1 20.5h14M26 20.5h14" />
      <circle cx="20.5" cy="20.5" r="1.6" />
    </svg>
  );
}
