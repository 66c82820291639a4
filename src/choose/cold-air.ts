import { drainage } from '../geo/drainage.ts';
import type { LocalXY } from '../geo/frame.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import {
  cellCentreX,
  cellCentreY,
  cellCount,
  type Grid,
  type GridSpec,
  sampleGrid,
} from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import { footprintPieces } from '../scene/build-prisms.ts';
import { localRings } from '../scene/local-rings.ts';
import type { SceneOptions } from '../scene/options.ts';
import { standingAt } from '../scene/things.ts';
import type { SiteDocument } from '../site/document.ts';
import { type AirRun, markLine } from './cold-dams.ts';

/** What holds cold air back, on the ground, local metres. */
export interface ColdDam {
  /** Even-odd rings of its footprint, one after the other. */
  readonly areas: readonly (readonly (readonly LocalXY[])[])[];
  /** Its axis: a strip may be narrower than a cell, and none is to leak between two; null: it has none. */
  readonly axis: readonly LocalXY[] | null;
  /** How deep it dams, m. */
  readonly heightM: number;
}

/** What cold air runs over. Structured-cloneable. */
export interface ColdAirScene {
  readonly ground: Grid;
  readonly dams: readonly ColdDam[];
}

/** Where cold air would gather on a still night; a rank and a map, no temperature. Row-major as the grid. */
export interface ColdAir {
  readonly grid: GridSpec;
  /** The ground itself on these cells, m above datum; NaN where there is none. */
  readonly elevationM: Float32Array;
  /** Depth to which the land would fill before it spills over, m; NaN without ground. */
  readonly depthM: Float32Array;
  /** The same with what belts, woods, walls and buildings hold back. */
  readonly dammedDepthM: Float32Array;
  /** Ground that drains through each cell, m2, as water runs: through belts. */
  readonly upslopeM2: Float64Array;
  /** The same of cold air, round what holds it back. */
  readonly air: AirRun;
}

/** Finer ground than this says nothing more of cold air, and coarser ground than this has no room for a belt, m. */
const FINEST_M = 2;
const COARSEST_M = 4;
const MOST_CELLS = 1_000_000;
/** Cold air that drains lies this deep, and so much of it a dense belt holds back. Common practice, no source. */
const DAM_M = 2;
/** What is open below lets it out, and what is thin lets it through. Common practice, no source. */
const OPEN_FOOT_M = 0.5;
const THIN_POROSITY = 0.6;

/** The ground, and what of that which stands in the options' year is dense down to the ground. Leaves as in summer. */
export function coldAirScene(document: SiteDocument, options: SceneOptions): ColdAirScene {
  const { frame, ground } = options;
  const { breaks, buildings } = standingAt(document, options);
  return {
    ground,
    dams: [
      ...breaks
        .filter(({ stand }) => stand.baseM <= OPEN_FOOT_M && stand.porosityOn <= THIN_POROSITY)
        .map((standing): ColdDam => {
          const { geometry } = standing.feature;
          const heightM = Math.min(DAM_M, standing.stand.heightM);
          return geometry.type === 'Polygon'
            ? { areas: [localRings(frame, geometry.coordinates)], axis: null, heightM }
            : {
                areas: footprintPieces(frame, standing).map((ring) => [ring]),
                axis: ringToLocal(frame, geometry.coordinates),
                heightM,
              };
        }),
      ...buildings.map(
        ({ feature, heightM }): ColdDam => ({
          areas: [localRings(frame, feature.geometry.coordinates)],
          axis: null,
          heightM: Math.min(DAM_M, heightM),
        }),
      ),
    ],
  };
}

/** Cold air over the whole ground. A gap in a belt lets it out where it is wider than a cell. */
export function* computeColdAir({ ground, dams }: ColdAirScene): Steps<ColdAir> {
  const land = onUsefulCells(ground);
  yield 0.1;
  const open = drainage(land);
  yield 0.5;
  const damM = damHeights(land, dams);
  const held = damM ? drainage({ ...land, values: land.values.map((z, cell) => z + damM[cell]) }) : open;
  const depth = (filledM: Float32Array, cell: number) => Math.max(0, filledM[cell] - land.values[cell]);
  return {
    grid: {
      columns: land.columns,
      rows: land.rows,
      cellM: land.cellM,
      westM: land.westM,
      northM: land.northM,
    },
    elevationM: land.values,
    depthM: open.filledM.map((_, cell) => depth(open.filledM, cell)),
    // What stands on a dam is not under cold air because of it.
    dammedDepthM: held.filledM.map((_, cell) => depth(damM?.[cell] ? open.filledM : held.filledM, cell)),
    upslopeM2: open.upslopeM2,
    air: { runsTo: held.runsTo, upslopeM2: held.upslopeM2 },
  };
}

/** The ground on cells that cold air is looked at on: the mean of fine ones, bilinear between coarse ones. */
function onUsefulCells(ground: Grid): Grid {
  const { columns, rows, cellM, westM, northM } = ground;
  const leastM = Math.sqrt((cellCount(ground) * cellM * cellM) / MOST_CELLS);
  const several = Math.ceil(Math.max(FINEST_M, leastM) / cellM - 1e-9);
  if (several > 1) return meanOf(ground, several);
  const wantedM = Math.max(COARSEST_M, leastM);
  if (cellM <= wantedM) return ground;
  const parts = Math.ceil(cellM / wantedM);
  const spec = { columns: columns * parts, rows: rows * parts, cellM: cellM / parts, westM, northM };
  const values = Float32Array.from({ length: cellCount(spec) }, (_, cell) =>
    sampleGrid(
      ground,
      cellCentreX(spec, cell % spec.columns),
      cellCentreY(spec, Math.floor(cell / spec.columns)),
    ),
  );
  return { ...spec, values };
}

/** Means over squares of so many cells a side; of those that there are at the edges and beside missing ground. */
function meanOf({ columns, rows, cellM, westM, northM, values }: Grid, side: number): Grid {
  const spec = {
    columns: Math.ceil(columns / side),
    rows: Math.ceil(rows / side),
    cellM: cellM * side,
    westM,
    northM,
  };
  const sum = new Float64Array(cellCount(spec));
  const count = new Uint32Array(cellCount(spec));
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const value = values[row * columns + column];
      if (Number.isNaN(value)) continue;
      const into = Math.floor(row / side) * spec.columns + Math.floor(column / side);
      sum[into] += value;
      count[into]++;
    }
  return {
    ...spec,
    values: Float32Array.from(sum, (each, cell) => (count[cell] > 0 ? each / count[cell] : Number.NaN)),
  };
}

/** How much each cell is raised, m; null: nothing stands in the way. */
function damHeights(grid: GridSpec, dams: readonly ColdDam[]): Float32Array | null {
  if (dams.length === 0) return null;
  const damM = new Float32Array(cellCount(grid));
  const mask = new Uint8Array(cellCount(grid));
  for (const { areas, axis, heightM } of dams) {
    mask.fill(0);
    for (const rings of areas) cellsInside(grid, rings, mask);
    if (axis) markLine(grid, axis, mask);
    for (let cell = 0; cell < mask.length; cell++)
      if (mask[cell] && damM[cell] < heightM) damM[cell] = heightM;
  }
  return damM;
}
