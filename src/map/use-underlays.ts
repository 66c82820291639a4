import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useRef } from 'react';
import { fileUrl } from '../state/site-files.ts';
import { useApp } from '../state/store.ts';
import type { Corners } from './grid-corners.ts';
import { layImageFile, takeRasterOff } from './raster-source.ts';

const TILES = 'added-tiles';
/** The first layer above the paper that is always there. */
const ABOVE = 'band-hatch-1';

const lowestRaster = (map: MapLibre): string => ['picture', 'relief'].find((id) => map.getLayer(id)) ?? ABOVE;

/** What a person lays under the plan: tiles from an address they have added, scans and air photos on the ground. */
export function useUnderlays(map: MapLibre | null): void {
  const tileAddress = useApp((app) => app.document.site.tileAddress);
  const pictures = useApp((app) => app.document.site.pictures);
  const missingFiles = useApp((app) => app.missingFiles);
  const laid = useRef<string[]>([]);

  useEffect(() => {
    if (!map || !tileAddress) return;
    const firstPicture = map.getStyle().layers.find((layer) => layer.id.startsWith('ground-picture-'));
    map.addSource(TILES, { type: 'raster', tiles: [tileAddress], tileSize: 256, maxzoom: 20 });
    map.addLayer(
      {
        id: TILES,
        type: 'raster',
        source: TILES,
        paint: { 'raster-fade-duration': 0, 'raster-opacity': 0.9 },
      },
      firstPicture?.id ?? lowestRaster(map),
    );
    return () => {
      if (map.style) takeRasterOff(map, TILES);
    };
  }, [map, tileAddress]);

  useEffect(() => {
    if (!map) return;
    let current = true;
    const lay = async () => {
      const onDevice = (pictures ?? []).filter((picture) => !missingFiles.includes(picture.file));
      const urls = await Promise.all(onDevice.map((picture) => fileUrl(picture.file)));
      if (!current) return;
      const wanted: string[] = [];
      urls.forEach((url, index) => {
        if (!url) return;
        const { cornersLonLat, opacity = 0.8 } = onDevice[index];
        const id = `ground-picture-${index}`;
        wanted.push(id);
        const place = { id, beforeId: lowestRaster(map), opacity };
        layImageFile(map, place, { url, corners: cornersLonLat as unknown as Corners });
      });
      for (const id of laid.current) if (!wanted.includes(id)) takeRasterOff(map, id);
      laid.current = wanted;
    };
    void lay();
    return () => {
      current = false;
    };
  }, [map, pictures, missingFiles]);
}
