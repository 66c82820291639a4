import { bestOfEach, isOfBelts } from '../belts/propose-answer.ts';
import type { BeltAlternative, BeltProposals } from '../belts/propose-result.ts';
import { checkWish, fieldAreaM2, type ProposeSetting } from '../belts/propose-setting.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { proposeAsks } from './propose-asks.ts';
import { figuresOf } from './propose-figures.ts';
import { firstLaterYear, settled, soonest } from './propose-settle.ts';

/** Shares of the whole, for the progress. */
const SEARCHED = 0.35;
const SOONER = 0.6;
const SOONEST = 0.95;

/**
 * Belts for a field that cut the wind as wished: with least land, with least shade, and soonest, each with the figures
 * that the engines have for it; or why it cannot be.
 * @throws BadInputError for a wish that means nothing
 */
export async function runProposeBelts(
  runner: JobRunner,
  setting: ProposeSetting,
  run: RunOptions = {},
): Promise<BeltProposals> {
  checkWish(setting.wish);
  const { wish, document } = setting;
  const between = (from: number, to: number) => (done: number) => run.onProgress?.(from + (to - from) * done);
  const progress = between(0, 1);
  const asks = proposeAsks(runner, setting, run.signal);
  const { over: overShareNow } = await asks.overIn(document, wish.year, 'usual');
  const head = {
    wish,
    fieldName: asks.field.properties.name ?? 'the field',
    fieldAreaM2: fieldAreaM2(asks.field),
    overShareNow,
  };
  if (overShareNow >= wish.overShare) {
    progress(1);
    return { ...head, tried: 0, alternatives: [], help: null };
  }
  const { found, cutThere, tried } = await settled(asks, wish.year, ['land', 'shade'], between(0, SEARCHED));
  const land = found.get('land');
  const shade = found.get('shade');
  const light = await asks.lightOf(document);

  if (!land?.enough && !shade?.enough) {
    const year = await firstLaterYear(asks, between(SEARCHED, SOONER));
    const most =
      land && land.belts.length > 0
        ? [{ ...(await figuresOf(asks, land.belts, light)), aims: ['most' as const] }]
        : [];
    progress(1);
    return { ...head, tried, alternatives: most, help: { year, cutShare: cutThere } };
  }

  const ways: BeltAlternative[] = [];
  for (const one of [land, shade])
    if (one?.enough && !ways.some((way) => isOfBelts(way, one.belts)))
      ways.push(await figuresOf(asks, one.belts, light));
  const earliest = Math.min(...ways.map(({ fromYear }) => fromYear.usual ?? wish.year));
  const sooner = await soonest(asks, earliest, between(SOONER, SOONEST));
  if (sooner) ways.push(await figuresOf(asks, sooner, light));
  progress(1);
  return { ...head, tried, alternatives: bestOfEach(ways), help: null };
}
