import type { BeltAim } from '../belts/propose-job.ts';
import { planted } from '../belts/propose-setting.ts';
import type { BeltOption } from '../belts/propose-types.ts';
import type { ProposeAsks, Share } from './propose-asks.ts';

/** How often a search is asked for more where the engine finds a little less than it promised. */
const MOST_CORRECTIONS = 3;
const CORRECTION_MARGIN = 0.01;
/** Years after the wished one that are looked at. */
const LATER_YEARS = [3, 6, 10, 15, 20];
/** Within so many years after the wished one what is planted is looked for to become enough. */
export const MOST_LATER_YEARS = LATER_YEARS[LATER_YEARS.length - 1];

interface Found {
  readonly belts: readonly BeltOption[];
  readonly enough: boolean;
}

interface Settled {
  readonly found: ReadonlyMap<BeltAim, Found>;
  /** The cut that the asked share of the field can have. */
  readonly cutThere: number;
  /** Places and species that were tried. */
  readonly tried: number;
}

/** A choice for each aim that the engine agrees with: it has the last word over the search. */
export async function settled(
  asks: ProposeAsks,
  year: number,
  aims: readonly BeltAim[],
  share: Share,
  corrections = MOST_CORRECTIONS,
): Promise<Settled> {
  const { setting } = asks;
  const { overShare } = setting.wish;
  let asked = overShare;
  const found = new Map<BeltAim, Found>();
  let cutThere = 0;
  let tried = 0;
  for (let round = 0; round <= corrections; round++) {
    const open = aims.filter((aim) => !found.get(aim)?.enough);
    const { result, options } = await asks.search(year, open, asked, (done) =>
      share((round + done) / (corrections + 1)),
    );
    tried = options.length;
    if (!result) break;
    cutThere = Math.max(cutThere, result.cutThere);
    let short = 0;
    for (const [i, aim] of open.entries()) {
      const choice = result.choices[i];
      const belts = choice.chosen.map((one) => options[one]);
      const { over } = await asks.overIn(planted(setting, belts).document, year, 'usual');
      if (over < overShare && choice.enough) short = Math.max(short, overShare - over);
      if (over >= overShare || round === 0) found.set(aim, { belts, enough: over >= overShare });
    }
    if (short === 0 || asked >= 1) break;
    asked = Math.min(1, asked + short + CORRECTION_MARGIN);
  }
  share(1);
  return { found, cutThere, tried };
}

/** The belts that do in the earliest year in which any do, by halving the years before; null: none earlier. */
export async function soonest(
  asks: ProposeAsks,
  before: number,
  share: Share,
): Promise<readonly BeltOption[] | null> {
  let [low, high] = [0, before];
  let best: readonly BeltOption[] | null = null;
  for (let step = 0; high - low > 1; step++) {
    const year = Math.floor((low + high) / 2);
    const at = await settled(asks, year, ['land'], (done) => share(1 - 0.5 ** (step + done)), 1);
    const choice = at.found.get('land');
    if (choice?.enough && choice.belts.length > 0) {
      high = year;
      best = choice.belts;
    } else low = year;
  }
  return best;
}

/** The first of some years after the wished one in which belts planted now can do; null: none. */
export async function firstLaterYear(asks: ProposeAsks, share: Share): Promise<number | null> {
  const { year, overShare } = asks.setting.wish;
  for (const [i, later] of LATER_YEARS.entries()) {
    const { result } = await asks.search(year + later, ['land'], overShare, (done) =>
      share((i + done) / LATER_YEARS.length),
    );
    if (result?.choices[0].enough) return year + later;
  }
  return null;
}
