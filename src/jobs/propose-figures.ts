import { lightLost, proposedBelts, underBelts } from '../belts/propose-answer.ts';
import type { BeltAlternative } from '../belts/propose-result.ts';
import { planted } from '../belts/propose-setting.ts';
import type { BeltOption } from '../belts/propose-types.ts';
import type { LightResult } from '../light/light-types.ts';
import type { ProposeAsks } from './propose-asks.ts';
import { MOST_LATER_YEARS } from './propose-settle.ts';

type SiteDocument = ProposeAsks['setting']['document'];
type Pace = Parameters<ProposeAsks['overIn']>[2];

/** What several belts together come to, by the engines. @param light the field's without them */
export async function figuresOf(
  asks: ProposeAsks,
  belts: readonly BeltOption[],
  light: LightResult,
): Promise<BeltAlternative> {
  const { setting, lightCells } = asks;
  const { wish } = setting;
  const { document } = planted(setting, belts);
  const at = (pace: Pace) => asks.overIn(document, wish.year, pace);
  const [slow, usual, fast] = [await at('slow'), await at('usual'), await at('fast')];
  const lost = lightLost(
    light,
    await asks.lightOf(document),
    lightCells.mask,
    underBelts(belts, lightCells.grid),
  );
  const proposed = proposedBelts(setting, belts);
  return {
    aims: [],
    belts: proposed,
    landM2: proposed.reduce((sum, { landM2 }) => sum + landM2, 0),
    darkM2: lost.darkM2,
    overShare: { slow: slow.over, usual: usual.over, fast: fast.over },
    meanCut: usual.mean,
    fromYear: {
      slow: await fromYear(asks, document, 'slow', slow.over),
      usual: await fromYear(asks, document, 'usual', usual.over),
      fast: await fromYear(asks, document, 'fast', fast.over),
    },
    light: lost.light,
    enough: usual.over >= wish.overShare,
  };
}

/**
 * The year from which it is enough; null: not within twenty years after the wished one. Halved on a coarse grid, then
 * set right year by year on the one that has the last word: young belts hardly reach the cut, and there few cells and
 * directions are a year or more wrong.
 */
async function fromYear(
  asks: ProposeAsks,
  document: SiteDocument,
  pace: Pace,
  overThen: number,
): Promise<number | null> {
  const { year: wished, overShare } = asks.setting.wish;
  const enough = async (year: number) => (await asks.overIn(document, year, pace)).over >= overShare;
  const then = overThen >= overShare;
  const last = then ? wished : wished + MOST_LATER_YEARS;
  if (!then && !(await enough(last))) return null;
  let [low, high] = then ? [-1, wished] : [wished, last];
  while (high - low > 1) {
    const year = Math.floor((low + high) / 2);
    if ((await asks.roughlyOver(document, year, pace)) >= overShare) high = year;
    else low = year;
  }
  const first = then ? 0 : wished + 1;
  let year = high;
  if (year === last || (await enough(year))) {
    while (year > first && (await enough(year - 1))) year--;
    return year;
  }
  while (year < last && !(await enough(year))) year++;
  return year;
}
