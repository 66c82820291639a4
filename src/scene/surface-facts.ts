import { cellCentreX, cellCentreY, type Grid, sampleGrid } from '../numeric/grid.ts';
import { BadInputError } from '../units/bad-input.ts';
import { canopyOf } from './site-surface.ts';

/** What a surface raster shows beside the terrain, on the cells that both know. */
export interface SurfaceFacts {
  readonly cellM: number;
  /** Sides of the box around what it covers, and the share of that land with woods on it, 0 to 1. */
  readonly eastM: number;
  readonly northM: number;
  readonly woodedShare: number;
  readonly tallestM: number;
  /** Surface less terrain, m: where it lies lowest (one cell in fifty lies lower) and in the middle. */
  readonly lowestM: number;
  readonly middleM: number;
}

/** About so many cells are compared. */
const SAMPLES = 100_000;
const known = new WeakMap<Grid, { readonly ground: Grid; readonly facts: SurfaceFacts }>();

export function surfaceFacts(surface: Grid, ground: Grid): SurfaceFacts {
  const before = known.get(surface);
  if (before?.ground === ground) return before.facts;
  const canopy = canopyOf(surface, ground);
  const step = Math.max(1, Math.floor(surface.values.length / SAMPLES));
  const differences: number[] = [];
  let wooded = 0;
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let cell = 0; cell < surface.values.length; cell += step) {
    const xM = cellCentreX(surface, cell % surface.columns);
    const yM = cellCentreY(surface, Math.floor(cell / surface.columns));
    const difference = surface.values[cell] - sampleGrid(ground, xM, yM);
    if (Number.isNaN(difference)) continue;
    differences.push(difference);
    west = Math.min(west, xM);
    east = Math.max(east, xM);
    south = Math.min(south, yM);
    north = Math.max(north, yM);
    if (canopy.values[cell] > 0) wooded++;
  }
  differences.sort((a, b) => a - b);
  const at = (share: number) => differences[Math.floor(share * (differences.length - 1))] ?? Number.NaN;
  const facts = {
    cellM: surface.cellM,
    eastM: differences.length > 0 ? east - west : 0,
    northM: differences.length > 0 ? north - south : 0,
    woodedShare: differences.length > 0 ? wooded / differences.length : 0,
    tallestM: canopy.values.reduce((most, heightM) => Math.max(most, heightM), 0),
    lowestM: at(0.02),
    middleM: at(0.5),
  };
  known.set(surface, { ground, facts });
  return facts;
}

/** Two rasters of the same land may differ by so much, m; more is another datum, or other heights. Our guess. */
const MOST_OFF_M = 1;

/**
 * @throws BadInputError where the surface lies below the terrain, so that it cannot be what is asked for.
 * @returns a sentence where it lies above the terrain even at its lowest, otherwise null.
 */
export function surfaceProblem(
  surface: Grid,
  ground: Grid,
  file: string,
  terrainFile: string,
): string | null {
  const { lowestM, middleM } = surfaceFacts(surface, ground);
  if (middleM < -MOST_OFF_M)
    throw new BadInputError(
      `${file}: most of the surface lies ${rounded(-middleM)} m or more below the terrain of ${terrainFile}; expected elevations of the tops on the same datum, not heights above the ground.`,
    );
  return lowestM > MOST_OFF_M
    ? `${file} lies ${rounded(lowestM)} m above the terrain of ${terrainFile} even where it is lowest; expected tops on the same datum, that come down to the ground between the woods.`
    : null;
}

const rounded = (valueM: number): string => valueM.toFixed(1);
