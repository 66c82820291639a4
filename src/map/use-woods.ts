import type { Map as MapLibre } from 'maplibre-gl';
import { useEffect, useMemo } from 'react';
import { toLonLat } from '../geo/frame.ts';
import type { Grid } from '../numeric/grid.ts';
import { useApp } from '../state/store.ts';
import { woodsAround } from '../state/woods-around.ts';
import { gridCorners } from './grid-corners.ts';
import type { InkTheme } from './ink-theme.ts';
import type { PaintedPicture } from './picture-painter.ts';
import { layPicture } from './raster-source.ts';

const WOOD_INK = [31, 74, 57] as const;
const DARK_WOOD_INK = [94, 144, 119] as const;
/** Lighter than a wood that is drawn, which lies over it. */
const WASH = 0.3;

/** A wash where the surface file shows woods that count. */
export function useWoods(map: MapLibre | null, theme: InkTheme): void {
  const woods = useApp(woodsAround);
  const frame = useApp((app) => app.frame);
  const painted = useMemo(
    () => woods && washOf(woods, theme.dark ? DARK_WOOD_INK : WOOD_INK),
    [woods, theme.dark],
  );
  useEffect(() => {
    if (!map) return;
    layPicture(
      map,
      { id: 'woods-around', beforeId: 'band-hatch-1', opacity: WASH },
      woods && painted && { painted, corners: gridCorners(woods, (xM, yM) => toLonLat(frame, [xM, yM])) },
    );
  }, [map, woods, painted, frame]);
}

function washOf(woods: Grid, [red, green, blue]: readonly [number, number, number]): PaintedPicture {
  const pixels = new Uint8ClampedArray(4 * woods.values.length);
  woods.values.forEach((heightM, cell) => {
    if (heightM > 0) pixels.set([red, green, blue, 255], 4 * cell);
  });
  return { width: woods.columns, height: woods.rows, pixels };
}
