import { contourIntervalM, contourLines } from '../geo/contours.ts';
import { type Frame, toLonLat } from '../geo/frame.ts';
import { hillshade } from '../geo/terrain.ts';
import { cellCount, type Grid, sampleGrid } from '../numeric/grid.ts';
import type { UnitSystem } from '../state/model.ts';
import { gridCorners, placeInCorners } from './grid-corners.ts';
import type { PaintedPicture } from './picture-painter.ts';

const MOST_CELLS = 600_000;
const FOOT_M = 0.3048;
const LIT_INK = [255, 254, 246] as const;
const SHADED_INK = [58, 66, 60] as const;

/** The ground in cells coarse enough to shade and contour at once. */
function lightened(ground: Grid): Grid {
  if (cellCount(ground) <= MOST_CELLS) return ground;
  const factor = Math.ceil(Math.sqrt(cellCount(ground) / MOST_CELLS));
  const columns = Math.floor(ground.columns / factor);
  const rows = Math.floor(ground.rows / factor);
  const cellM = ground.cellM * factor;
  const coarse = { columns, rows, cellM, westM: ground.westM, northM: ground.northM };
  const values = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      values[row * columns + column] = sampleGrid(
        ground,
        coarse.westM + (column + 0.5) * cellM,
        coarse.northM - (row + 0.5) * cellM,
      );
  return { ...coarse, values };
}

/** Share of ink at most, so that the relief stays a wash under the plan. */
const MOST_INK = 0.4;
/** How many standard deviations from the hillside's own tone take the most ink. */
const DEVIATIONS = 2.6;

/**
 * The relief as a wash: dark ink where the ground turns from the light more than the site as a whole does, white where
 * it turns to it, clear in between, so that it lies over paper, photos and inked bands alike. A plain slope stays
 * clear: its fall is read from the contours.
 */
function reliefWash(ground: Grid, convergenceRad: number): PaintedPicture {
  const shade = hillshade(ground, convergenceRad, { exaggeration: 2 });
  let count = 0;
  let sum = 0;
  let squares = 0;
  for (const value of shade) {
    if (Number.isNaN(value)) continue;
    count++;
    sum += value;
    squares += value * value;
  }
  const mean = sum / count;
  // On nearly even ground small ripples must not be drawn up into hills.
  const spread = Math.max(0.03, Math.sqrt(Math.max(0, squares / count - mean * mean)));
  const pixels = new Uint8ClampedArray(ground.columns * ground.rows * 4);
  for (let cell = 0; cell < shade.length; cell++) {
    const turned = (shade[cell] - mean) / (spread * DEVIATIONS);
    if (Number.isNaN(turned)) continue;
    const [red, green, blue] = turned > 0 ? LIT_INK : SHADED_INK;
    pixels[cell * 4] = red;
    pixels[cell * 4 + 1] = green;
    pixels[cell * 4 + 2] = blue;
    pixels[cell * 4 + 3] = Math.min(1, Math.abs(turned)) * MOST_INK * 255;
  }
  return { width: ground.columns, height: ground.rows, pixels };
}

/** Level ground has no relief and no contours worth drawing. */
const elevationSpanM = (ground: Grid): number => {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of ground.values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low;
};

/** Contours of the ground in metres, or in feet for a person who measures so; every fifth is heavier. */
function contourFeatures(ground: Grid, frame: Frame, units: UnitSystem): GeoJSON.FeatureCollection {
  const unitM = units === 'metric' ? 1 : FOOT_M;
  const inUnits: Grid =
    unitM === 1 ? ground : { ...ground, values: ground.values.map((value) => value / unitM) };
  const interval = contourIntervalM(inUnits, 22);
  const corners = gridCorners(ground, (xM, yM) => toLonLat(frame, [xM, yM]));
  const place = placeInCorners(corners, ground);
  const lines = contourLines(inUnits, interval);
  return {
    type: 'FeatureCollection',
    features: lines.map(({ elevationM, line }) => {
      const steps = Math.round(elevationM / interval);
      const index = steps % 5 === 0;
      return {
        type: 'Feature',
        properties: {
          index,
          label: `${Number(elevationM.toFixed(2))} ${units === 'metric' ? 'm' : 'ft'}`,
        },
        geometry: {
          type: 'LineString',
          coordinates: line.map(([xM, yM]) =>
            place((xM - ground.westM) / ground.cellM, (ground.northM - yM) / ground.cellM),
          ),
        },
      };
    }),
  };
}

export interface Relief {
  readonly grid: Grid;
  readonly wash: PaintedPicture;
  readonly contours: GeoJSON.FeatureCollection;
}

/** Relief and contours of the ground; null where it is level or not known. */
export function reliefOf(ground: Grid | null, frame: Frame, units: UnitSystem): Relief | null {
  if (!ground || ground.columns < 3 || ground.rows < 3) return null;
  const grid = lightened(ground);
  const span = elevationSpanM(grid);
  if (!(span > 0.05)) return null;
  return {
    grid,
    wash: reliefWash(grid, frame.convergenceRad),
    contours: contourFeatures(grid, frame, units),
  };
}
