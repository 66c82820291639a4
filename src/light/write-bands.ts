/** From a tile's sums of losses to the bands of a light result. */
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import { WEIGHT_BEAM_GROWING, WEIGHT_BEAM_RESTING, WEIGHT_HOURS } from '../sun/year-quadrature.ts';
import { PLANE_BYTES } from './kernel/assembly/layout.ts';
import type { Kernel } from './kernel/kernel.ts';
import type { LoadedTile } from './kernel/load.ts';
import { LAND_SLOTS, type LightPlan, SKY_SLOTS } from './light-plan.ts';
import type { LightResult } from './light-types.ts';
import { chosenRows, type RowChoice } from './shadow-tile.ts';
import { STATED_YEAR_ERROR } from './stated-error.ts';

type BandName = 'directHours' | 'openHours' | 'lightShare';

/** One band: clamp(bias - sum of the terms' coefficient * slot, 0, most). */
interface Band {
  readonly name: BandName;
  readonly period: number;
  readonly bias: number;
  readonly most: number;
  /** Address of (slot, coefficient) pairs. */
  readonly terms: number;
  readonly termCount: number;
  /** For a month's share of light: photons of an open day there (mol m-2), by which the daily light integral is written too. */
  readonly openMolADay: number | null;
}

export interface BandWriter {
  readonly bands: readonly Band[];
  /** Room for one band of a tile. */
  readonly out: number;
}

/** @param rows which of the grid's rows the result holds */
export function emptyResult(plan: LightPlan, grid: GridSpec, rows: RowChoice): LightResult {
  const cells = cellCount({ ...grid, rows: chosenRows(grid, rows) });
  return {
    grid,
    directHours: new Float32Array(12 * cells),
    openHours: new Float32Array(12 * cells),
    lightShare: new Float32Array(13 * cells),
    dailyLightIntegral: new Float32Array(12 * cells),
    openDailyLightIntegral: Float32Array.from(plan.daysInMonth, (days, month) => plan.openMol[month] / days),
    // A copy: a result is handed over to whoever asked, and the plan is kept.
    growingDaysByMonth: plan.growingDaysByMonth.slice(),
    directions: plan.sun.length,
    quadratureError: STATED_YEAR_ERROR,
  };
}

export function bandWriter(kernel: Kernel, plan: LightPlan): BandWriter {
  const bands: Band[] = [];
  const add = (
    name: BandName,
    period: number,
    terms: readonly (readonly [slot: number, coefficient: number])[],
    limits: { readonly bias: number; readonly most: number },
    openMolADay: number | null = null,
  ): void => {
    const address = kernel.take(8 * terms.length);
    kernel.floats.set(terms.flat(), address / 4);
    bands.push({ name, period, terms: address, termCount: terms.length, openMolADay, ...limits });
  };
  for (let period = 0; period < 13; period++) {
    const openMolADay = period < 12 ? plan.openMol[period] / plan.daysInMonth[period] : null;
    add('lightShare', period, lostShare(plan, period), { bias: 1, most: 1 }, openMolADay);
    if (period === 12) continue;
    const hours = { bias: plan.sunTotal[WEIGHT_HOURS + period], most: Number.POSITIVE_INFINITY };
    add('directHours', period, [[WEIGHT_HOURS + period, 1]], hours);
    add('openHours', period, [[LAND_SLOTS + period, 1]], hours);
  }
  return { bands, out: kernel.take(PLANE_BYTES) };
}

/** Slots and coefficients whose sum is the share of a period's light that is lost. */
export function lostShare(plan: LightPlan, period: number): [number, number][] {
  const openMol = plan.openMol[period];
  // A month of polar night has no light to share: what the sky would leave stands in.
  if (!(openMol > 0)) return [[SKY_SLOTS, 1]];
  const beam =
    period < 12
      ? [WEIGHT_BEAM_GROWING + period, WEIGHT_BEAM_RESTING + period]
      : Array.from({ length: 12 }, (_, month) => WEIGHT_BEAM_GROWING + month);
  return [
    ...beam.map((slot): [number, number] => [slot, 1 / openMol]),
    ...Array.from({ length: plan.skyGroups }, (_, g): [number, number] => [
      SKY_SLOTS + g,
      plan.diffuseMol[period * plan.skyGroups + g] / openMol,
    ]),
  ];
}

/**
 * Writes a tile's cells into a result.
 * @param row0,column0 where the tile lies among the result's rows and columns
 * @param hidden 1 for the cells of the tile (r * stride + c) that have no value
 * @param changed whether the result holds the tile already, and things have changed but not the land
 */
export function writeBands(
  kernel: Kernel,
  writer: BandWriter,
  at: LoadedTile,
  result: LightResult,
  row0: number,
  column0: number,
  hidden: Uint8Array,
  changed = false,
): void {
  const { columns, rows, stride } = at.tile;
  const gridColumns = result.grid.columns;
  const cells = result.openHours.length / 12;
  const from = writer.out / 4;
  const gone = hidden.includes(1);
  for (const { name, period, terms, termCount, bias, most, openMolADay } of writer.bands) {
    if (changed && name === 'openHours') continue;
    kernel.combine(at.address, terms, termCount, bias, most, writer.out);
    const { floats } = kernel;
    if (gone) for (let i = 0; i < hidden.length; i++) if (hidden[i]) floats[from + i] = Number.NaN;
    const values = result[name];
    const daily = openMolADay === null ? null : result.dailyLightIntegral;
    for (let r = 0; r < rows; r++) {
      const to = period * cells + (row0 + r) * gridColumns + column0;
      const row = from + r * stride;
      for (let c = 0; c < columns; c++) values[to + c] = floats[row + c];
      if (daily && openMolADay !== null)
        for (let c = 0; c < columns; c++) daily[to + c] = openMolADay * floats[row + c];
    }
  }
}
