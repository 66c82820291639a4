import './map.css';
import { useId, useRef, useState } from 'react';
import { pictureRaster } from '../state/picture-raster.ts';
import { appStore, useApp } from '../state/store.ts';
import { Cross } from './cross.tsx';
import { DrawBar } from './draw-bar.tsx';
import { useKeys } from './drawing/use-keys.ts';
import { usePointer } from './drawing/use-pointer.ts';
import { useReshaping } from './drawing/use-reshaping.ts';
import { useSketch } from './drawing/use-sketch.ts';
import { FelledBanner } from './felled-banner.tsx';
import { useInkTheme } from './ink-theme.ts';
import { LayoutBanner } from './layout-banner.tsx';
import { Legend } from './legend.tsx';
import { NorthArrow } from './north-arrow.tsx';
import { Progress } from './progress.tsx';
import { ReadOut } from './read-out.tsx';
import { ScaleBar } from './scale-bar.tsx';
import { siteBounds } from './site-bounds.ts';
import { Spoken } from './spoken.tsx';
import { useColdFlow } from './use-cold-flow.ts';
import { useFallStrip } from './use-fall-strip.ts';
import { useFitToSite } from './use-fit-to-site.ts';
import { useFitToYears } from './use-fit-to-years.ts';
import { useMap } from './use-map.ts';
import { usePicture } from './use-picture.ts';
import { usePlan } from './use-plan.ts';
import { useProposals } from './use-proposals.ts';
import { useRelief } from './use-relief.ts';
import { useStakes } from './use-stakes.ts';
import { useUnderlays } from './use-underlays.ts';
import { useWinterCuts } from './use-winter-cuts.ts';
import { useWoods } from './use-woods.ts';
import { ViewButtons } from './view-buttons.tsx';

/** The map that fills the window, with its legend, scale, north and read-out. */
export function MapView() {
  const container = useRef<HTMLDivElement>(null);
  const theme = useInkTheme();
  const help = useId();
  const map = useMap(container, theme, {
    label: 'Map. Arrow keys move a cross over the ground.',
    helpId: help,
    testId: 'map-canvas',
    keysMove: false,
    bounds: () => siteBounds(appStore.getState()),
    paddingPx: 48,
  });
  const raster = useApp(pictureRaster);
  const [hatched, setHatched] = useState(false);
  useRelief(map, theme);
  useWoods(map, theme);
  usePicture(map, raster, theme, hatched);
  useUnderlays(map);
  usePlan(map);
  useProposals(map);
  useWinterCuts(map);
  useStakes(map);
  useColdFlow(map);
  useFallStrip(map);
  const { showSite, showField } = useFitToSite(map);
  useFitToYears(map);
  usePointer(map);
  useKeys(map, container, showSite);
  useSketch(map);
  useReshaping(map, theme);

  return (
    <section className="map" aria-label="Map of the site" data-testid="map">
      <div ref={container} className="map-sheet" data-testid="map-sheet" />
      <Cross map={map} />
      <div className="map-head">
        <DrawBar />
        <FelledBanner />
        <LayoutBanner />
        <ReadOut map={map} />
      </div>
      <div className="map-foot-left">
        <ScaleBar map={map} />
        <NorthArrow map={map} />
        <ViewButtons map={map} showSite={showSite} showField={showField} />
      </div>
      <div className="map-foot-right">
        <Progress />
        <Legend raster={raster} hatched={hatched} onHatch={setHatched} />
      </div>
      <p id={help} className="map-unseen">
        {KEYS_IN_WORDS}
      </p>
      <Spoken />
    </section>
  );
}

const KEYS_IN_WORDS =
  'Arrow keys move the cross by 1 metre, with Shift by 10, with Alt by a tenth. Enter chooses what is under the cross, ' +
  'or places a point while drawing; Enter again in the same place, or Control Enter, finishes. Backspace takes the last ' +
  'point back, Escape gives up. With something chosen: M moves it by the arrow keys, R goes through its points with ' +
  'comma and full stop, Delete removes it, Control D copies it. Plus and minus zoom, Home shows the whole site, H the horizon from the cross, W the wind there.';
