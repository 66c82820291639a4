import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import type { AtEnds } from '../jobs/run-ends.ts';
import { type CauseChange, causesBySize } from '../jobs/run-ends-causes.ts';
import type { LightResult } from '../light/light-types.ts';
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import { CAUSES } from '../scene/ends.ts';
import { takenField } from '../site/chosen-features.ts';
import { fieldsOf } from './area-figures.ts';
import { type LightQuantity, lightOfPeriod } from './light-period.ts';
import type { AppState, Computation } from './model.ts';
import { isSunTime, monthOfSun, type SunTime, sunTimeOf } from './sun-times.ts';
import { windBand } from './wind-band.ts';

/**
 * A month's hours are off by this much more than the year's, from which the engine states its error: the promise is 1 %
 * of open hours for the year and 4 % for a month, in 99 of 100 cells.
 */
const MONTH_AGAINST_YEAR = 4;

/** Cells of the taken field, or of all fields; all cells where no field is drawn. */
function fieldMask(state: AppState, grid: GridSpec): Uint8Array {
  const taken = takenField(state.document);
  const fields = taken ? [taken] : fieldsOf(state.document);
  const mask = new Uint8Array(cellCount(grid));
  for (const { geometry } of fields)
    cellsInside(
      grid,
      geometry.coordinates.map((ring) => ringToLocal(state.frame, ring)),
      mask,
    );
  return mask.includes(1) ? mask : mask.fill(1);
}

/** The value of open ground in a period: hours of sun a day as a mean over the cells, or mol m-2 d-1; a share is 1. */
function openValue(
  result: LightResult,
  quantity: LightQuantity,
  period: AppState['period'],
  year: number,
): number {
  if (quantity === 'light-share') return 1;
  const cells = cellCount(result.grid);
  const openHours = new Float32Array(12).map(
    (_, month) =>
      result.openHours.subarray(month * cells, (month + 1) * cells).reduce((a, b) => a + (b || 0), 0) / cells,
  );
  const oneCell = {
    ...result,
    grid: { ...result.grid, columns: 1, rows: 1 },
    directHours: openHours,
    dailyLightIntegral: result.openDailyLightIntegral,
  };
  return lightOfPeriod(oneCell, quantity, period, year)[0];
}

function lightCauses(
  state: AppState,
  quantity: LightQuantity,
  at: AtEnds<LightResult>,
): CauseChange[] | null {
  const { period } = state;
  const calendarYear = state.document.site.baseYear + state.year;
  const { quadratureError } = at.usual;
  const scale =
    openValue(at.usual, quantity, period, calendarYear) *
    (typeof period === 'number' ? MONTH_AGAINST_YEAR : 1);
  return causesBySize(
    at,
    CAUSES,
    (result) => lightOfPeriod(result, quantity, period, calendarYear),
    fieldMask(state, at.usual.grid),
    // Stated of direct hours; of all light it is a part of that, so this is its upper end.
    { mean: quadratureError.mean * scale, p99: quadratureError.p99 * scale },
  );
}

function shelterCauses(state: AppState): CauseChange[] | null {
  const at = state.shelterEnds.result;
  if (!at) return null;
  const band = windBand(state);
  const cells = cellCount(at.usual.grid);
  return causesBySize(
    at,
    CAUSES,
    ({ windShare }) => windShare.subarray(band * cells, (band + 1) * cells).map((share) => 1 - share),
    fieldMask(state, at.usual.grid),
    null,
  );
}

function sunTimeCauses(state: AppState, picture: SunTime): CauseChange[] | null {
  const at = state.sunTimeEnds.result;
  if (!at) return null;
  const month = monthOfSun(state);
  const stepHours = at.usual.days[month].stepMin / 60;
  return causesBySize(
    at,
    CAUSES,
    (result) => sunTimeOf(result, picture, month),
    fieldMask(state, at.usual.grid),
    // An edge lies anywhere between two steps and is taken in their middle.
    { mean: stepHours / 4, p99: stepHours / 2 },
  );
}

/** What the map that is shown is at the ends of what is not known. */
export const endsOfMap = (state: AppState): Computation<AtEnds<unknown>> =>
  state.picture === 'wind-cut'
    ? state.shelterEnds
    : isSunTime(state.picture)
      ? state.sunTimeEnds
      : state.lightEnds;

let lastParts: readonly unknown[] = [];
let lastCauses: CauseChange[] | null = null;

/**
 * What is not known and would change the mean of the map over the field, largest first; null while it has not been
 * worked out and for maps on which nothing depends. The same object as long as nothing that matters changed.
 */
export function causesOfMap(state: AppState): readonly CauseChange[] | null {
  const { picture } = state;
  const parts = [picture, state.period, endsOfMap(state).result, state.document, state.frame];
  if (parts.length === lastParts.length && parts.every((part, i) => Object.is(part, lastParts[i])))
    return lastCauses;
  lastParts = parts;
  lastCauses =
    picture === 'plain' || picture === 'slope' || picture === 'cold-air'
      ? null
      : picture === 'wind-cut'
        ? shelterCauses(state)
        : isSunTime(picture)
          ? sunTimeCauses(state, picture)
          : state.lightEnds.result && lightCauses(state, picture, state.lightEnds.result);
  return lastCauses;
}
