import type { ShelteredFrom } from '../choose/choose-types.ts';
import { lasting } from '../choose/field-states.ts';
import type { Pace } from '../growth/height-curve.ts';
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import type { SceneOptions } from '../scene/options.ts';
import { withThingsNear } from '../scene/things-near.ts';
import type { SiteDocument } from '../site/document.ts';
import { QUICK_FINENESS } from '../wind/fineness.ts';
import type { LooksRequest } from './choose-looks.ts';
import { firstYearBetween, type YearShare } from './first-year.ts';
import { withGroundNear } from './ground-near.ts';
import type { JobRunner } from './messages.ts';

/** Half of a field in shelter counts as a field in shelter. */
const SHELTERED_SHARE = 0.5;
const LAST_YEAR = 40;
/** A belt of most species shelters by about then: the first guess. */
const LIKELY_YEAR = 8;
/** Slow growth seldom takes half as long again, and fast growth seldom half as long: that is looked at first. */
const LIKELY_LATER = 1.5;
const LIKELY_SOONER = 0.6;

/** A field on cells coarse enough that one look at it costs little. */
export interface CoarseField {
  readonly grid: GridSpec;
  readonly mask: Uint8Array;
}

/**
 * When half of the field is in shelter for good with what is planned: shelter is taken to grow on, and at no pace later
 * than at a slower one.
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
  const look = async (pace: Pace, year: number): Promise<YearShare> => {
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
    return { year, share: known > 0 ? enough / known : 0 };
  };
  const between = (pace: Pace, before: YearShare, by: YearShare): Promise<YearShare> =>
    firstYearBetween(SHELTERED_SHARE, before, by, (year) => look(pace, year));
  /** @param before a year in which it is not; @param likely a later one that is looked at first. */
  const after = async (pace: Pace, before: YearShare, likely: number): Promise<YearShare | null> => {
    if (before.year >= LAST_YEAR) return null;
    const seen = await look(pace, Math.min(LAST_YEAR, likely));
    return isSheltered(seen) ? between(pace, before, seen) : after(pace, seen, LAST_YEAR);
  };
  const first = await look('usual', 0);
  const usual = isSheltered(first) ? first : await after('usual', first, LIKELY_YEAR);
  // At the start, too: what was planted years ago and never measured is as tall as its pace has it.
  const later = async (from: YearShare): Promise<YearShare | null> => {
    const seen = await look('slow', from.year);
    return isSheltered(seen) ? seen : after('slow', seen, Math.ceil(LIKELY_LATER * from.year) + 1);
  };
  const sooner = async (from: YearShare): Promise<YearShare> => {
    if (from.year === 0) return from;
    const likely = await look('fast', Math.floor(LIKELY_SOONER * from.year));
    if (!isSheltered(likely)) return between('fast', likely, from);
    const start = likely.year === 0 ? likely : await look('fast', 0);
    return isSheltered(start) ? start : between('fast', start, likely);
  };
  const slow = usual && (await later(usual));
  const fast = usual ? await sooner(usual) : await after('fast', first, LAST_YEAR);
  return { slow: slow?.year ?? null, usual: usual?.year ?? null, fast: fast?.year ?? null };
}

const isSheltered = ({ share }: YearShare): boolean => share >= SHELTERED_SHARE;
