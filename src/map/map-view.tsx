import './map.css';
import { useRef, useState } from 'react';
import { pictureRaster } from '../state/picture-raster.ts';
import { useApp } from '../state/store.ts';
import { useInkTheme } from './ink-theme.ts';
import { Legend } from './legend.tsx';
import { NorthArrow } from './north-arrow.tsx';
import { Progress } from './progress.tsx';
import { ScaleBar } from './scale-bar.tsx';
import { useFitToSite } from './use-fit-to-site.ts';
import { useMap } from './use-map.ts';
import { usePicture } from './use-picture.ts';
import { usePlan } from './use-plan.ts';
import { useRelief } from './use-relief.ts';
import { useUnderlays } from './use-underlays.ts';

/** The map that fills the window, with its legend, scale, north and read-out. */
export function MapView() {
  const container = useRef<HTMLDivElement>(null);
  const theme = useInkTheme();
  const map = useMap(container, theme);
  const raster = useApp(pictureRaster);
  const [hatched, setHatched] = useState(false);
  useRelief(map);
  usePicture(map, raster, theme, hatched);
  useUnderlays(map);
  usePlan(map);
  const fit = useFitToSite(map);

  return (
    <section className="map" aria-label="Map of the site" data-testid="map">
      <div ref={container} className="map-sheet" />
      <div className="map-foot-left">
        <ScaleBar map={map} />
        <NorthArrow map={map} />
        <button type="button" className="map-fit" onClick={fit} data-testid="map-fit">
          Whole site
        </button>
      </div>
      <div className="map-foot-right">
        <Progress />
        <Legend raster={raster} hatched={hatched} onHatch={setHatched} />
      </div>
    </section>
  );
}
