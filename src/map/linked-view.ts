import type { Map as MapLibre } from 'maplibre-gl';

/** Maps that show the same piece of ground: where one is moved, the others go too. */
export interface LinkedView {
  /** @returns a function that lets it go again. */
  join(map: MapLibre): () => void;
}

export function linkedView(): LinkedView {
  const maps = new Set<MapLibre>();
  let following = false;
  return {
    join(map) {
      const follow = () => {
        // What follows moves too: it leads nobody.
        if (following) return;
        following = true;
        try {
          const view = { center: map.getCenter(), zoom: map.getZoom(), bearing: map.getBearing() };
          for (const other of maps) if (other !== map) other.jumpTo(view);
        } finally {
          following = false;
        }
      };
      maps.add(map);
      map.on('move', follow);
      return () => {
        maps.delete(map);
        map.off('move', follow);
      };
    },
  };
}
