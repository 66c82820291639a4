import type { ShelteredFrom } from '../choose/choose-types.ts';
import { lasting } from '../choose/field-states.ts';
import type { Pace } from '../growth/height-curve.ts';
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import type { SceneOptions } from '../scene/options.ts';
import { withThingsNear } from '../scene/things-near.ts';
import type { SiteDocument } from '../site/document.ts';
import { QUICK_FINENESS } from '../wind/fineness.ts';
import type { LooksRequest } from './choose-looks.ts';
import { withGroundNear } from './ground-near.ts';
import type { JobRunner } from './messages.ts';

/** Half of a field in shelter counts as a field in shelter. */
const SHELTERED_SHARE = 0.5;
const LAST_YEAR = 40;
const BEFORE_ALL = -1;
const NEVER = LAST_YEAR + 1;
const LIKELY_LATER = 1.5;
const LIKELY_SOONER = 0.6;

/** A field on cells coarse enough that one look at it costs little. */
export interface CoarseField {
  readonly grid: GridSpec;
  readonly mask: Uint8Array;
}

/**
 * When half of the field is in shelter for good with what is planned, found by halving: shelter is taken to grow on, and
 * at no pace later than at a slower one.
 * @param withBelts the state with planned belts, of any year.
 */
export async function shelteredFrom(
  runner: JobRunner,
  { document, scenes, reading }: Omit<LooksRequest, 'lightHeightM'> & { readonly document: SiteDocument },
  { grid, mask }: CoarseField,
  withBelts: SceneOptions,
  windCut: number,
  signal: AbortSignal | undefined,
): Promise<ShelteredFrom> {
  const planned = lasting(document, withBelts);
  const isSheltered = async (pace: Pace, year: number): Promise<boolean> => {
    const scene = withGroundNear(withThingsNear(scenes.shelter({ ...planned, year, pace }), grid), [grid]);
    const { windShare } = await runner.run(
      'shelter',
      { ...reading, scene, grid, fineness: QUICK_FINENESS },
      { signal },
    );
    let [known, enough] = [0, 0];
    for (let cell = 0; cell < cellCount(grid); cell++) {
      if (!mask[cell] || Number.isNaN(windShare[cell])) continue;
      known++;
      if (1 - windShare[cell] >= windCut) enough++;
    }
    return known > 0 && enough >= SHELTERED_SHARE * known;
  };
  /** @param before a year in which it is not; @param until one in which it is, or the year after the last. */
  const firstYear = async (pace: Pace, before: number, until: number): Promise<number> => {
    let [from, by] = [before, until];
    while (by - from > 1) {
      const middle = Math.floor((from + by) / 2);
      if (await isSheltered(pace, middle)) by = middle;
      else from = middle;
    }
    return by;
  };
  /** Slow growth seldom takes half as long again, and fast growth seldom half as long: that is looked at first. */
  const later = async (year: number): Promise<number> => {
    if (year === NEVER || (await isSheltered('slow', year))) return year;
    const likely = Math.ceil(LIKELY_LATER * year) + 1;
    if (likely > LAST_YEAR) return firstYear('slow', year, NEVER);
    return (await isSheltered('slow', likely))
      ? firstYear('slow', year, likely)
      : firstYear('slow', likely, NEVER);
  };
  const sooner = async (year: number): Promise<number> => {
    if (year === 0) return 0;
    if (year === NEVER && !(await isSheltered('fast', LAST_YEAR))) return NEVER;
    const likely = Math.floor(year * LIKELY_SOONER);
    return (await isSheltered('fast', likely))
      ? firstYear('fast', BEFORE_ALL, likely)
      : firstYear('fast', likely, Math.min(year, LAST_YEAR));
  };
  const usual = await firstYear('usual', BEFORE_ALL, NEVER);
  const orNull = (year: number) => (year === NEVER ? null : year);
  return { slow: orNull(await later(usual)), usual: orNull(usual), fast: orNull(await sooner(usual)) };
}
