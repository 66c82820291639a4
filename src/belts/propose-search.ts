/**
 * The cheapest belts that cut the wind enough over enough of the field: from several starts the belt that brings most
 * for what it costs, then the next, until it is enough; then belts are left out, swapped, and taken out to be filled in
 * anew, as long as that is cheaper. Nothing is left to chance: the same question has the same answer.
 */
import { type Cover, cutOf, cutWith, together } from './propose-cover.ts';

export interface SearchTask {
  readonly cover: Cover;
  readonly cutShare: number;
  readonly overShare: number;
  /** What each belt costs, above 0. */
  readonly costs: Float64Array;
  readonly excludes: (a: number, b: number) => boolean;
  readonly mostBelts: number;
}

export interface Choice {
  /** Rising. */
  readonly chosen: readonly number[];
  readonly cost: number;
  /** Share of the cells on which the wind is cut enough. */
  readonly overShare: number;
  readonly enough: boolean;
}

/** Belts that are tried as the first one. */
const MOST_STARTS = 8;
/** Rounds of swapping at most. */
const MOST_ROUNDS = 6;

const shareOver = (cut: Float32Array, cutShare: number): number => {
  let over = 0;
  for (const one of cut) if (one >= cutShare) over++;
  return cut.length > 0 ? over / cut.length : 0;
};

/** How near all cells are to enough, 0 to 1: it rises before the first cell is there. */
const nearness = (cut: Float32Array, cutShare: number): number => {
  let sum = 0;
  for (const one of cut) sum += Math.min(1, Math.max(0, one / cutShare));
  return cut.length > 0 ? sum / cut.length : 0;
};

export function judge(task: SearchTask, chosen: readonly number[]): Choice {
  const { cover, cutShare, overShare, costs } = task;
  const share = shareOver(cutOf(cover, together(cover, chosen)), cutShare);
  return {
    chosen: [...chosen].sort((a, b) => a - b),
    cost: chosen.reduce((sum, one) => sum + costs[one], 0),
    overShare: share,
    enough: share >= overShare,
  };
}

/** Enough before not enough; then the cheaper; of those that are not enough the one that reaches farther. */
export function isBetter(a: Choice, b: Choice): boolean {
  if (a.enough !== b.enough) return a.enough;
  if (a.enough) return a.cost < b.cost - 1e-9;
  return a.overShare > b.overShare + 1e-9 || (a.overShare > b.overShare - 1e-9 && a.cost < b.cost - 1e-9);
}

/** What counts when the next belt is chosen. */
type Taste = (gain: number, cost: number) => number;
const FOR_ITS_COST: Taste = (gain, cost) => gain / cost;
const FOR_ITS_GAIN: Taste = (gain) => gain;

/** Beyond what is asked, more sheltered ground brings nothing. */
const merit = ({ cutShare, overShare }: SearchTask, cut: Float32Array): number =>
  Math.min(overShare, shareOver(cut, cutShare)) + nearness(cut, cutShare) / 4;

/**
 * A belt seldom brings more beside others than it does alone: what it brought when last looked at, and this much more,
 * says whether it is worth looking again.
 */
const MOST_GROWTH = 1.3;

/** What every belt brings to what stands there already; worked out once for a search. */
function gainsAlone(task: SearchTask): Float64Array {
  const { cover } = task;
  const now = merit(task, cutOf(cover, cover.standing));
  return Float64Array.from(cover.belts, (belt) => merit(task, cutWith(cover, cover.standing, belt)) - now);
}

/** Adds belts one by one until it is enough or none brings more. @param alone see `gainsAlone` */
function fillUp(task: SearchTask, start: readonly number[], taste: Taste, alone: Float64Array): Choice {
  const { cover, cutShare, overShare, costs, excludes, mostBelts } = task;
  const chosen = [...start];
  const known = alone.slice();
  let deficits = together(cover, chosen);
  let cut = cutOf(cover, deficits);
  while (shareOver(cut, cutShare) < overShare && chosen.length < mostBelts) {
    const now = merit(task, cut);
    const open = [...known.keys()]
      .filter((one) => !chosen.includes(one) && !chosen.some((other) => excludes(one, other)))
      .map((one) => ({ one, hoped: taste(MOST_GROWTH * Math.max(known[one], 1e-6), costs[one]) }))
      .sort((a, b) => b.hoped - a.hoped || a.one - b.one);
    let best = -1;
    let bestTaste = 0;
    for (const { one, hoped } of open) {
      if (hoped <= bestTaste) break;
      const gain = merit(task, cutWith(cover, deficits, cover.belts[one])) - now;
      known[one] = gain;
      const liked = gain > 1e-6 ? taste(gain, costs[one]) : 0;
      if (liked > bestTaste) [best, bestTaste] = [one, liked];
    }
    if (best < 0) break;
    chosen.push(best);
    deficits = together(cover, chosen);
    cut = cutOf(cover, deficits);
  }
  return judge(task, chosen);
}

/** Leaves out what is not needed, the dearest first. */
function pruned(task: SearchTask, choice: Choice): Choice {
  let best = choice;
  for (const one of [...choice.chosen].sort((a, b) => task.costs[b] - task.costs[a])) {
    const without = judge(
      task,
      best.chosen.filter((other) => other !== one),
    );
    if (without.enough || (!best.enough && !isBetter(best, without))) best = without;
  }
  return best;
}

/** The best of all swaps of one belt for another. */
function swapped(task: SearchTask, choice: Choice): Choice {
  const { cover, cutShare, overShare, costs, excludes } = task;
  let best = choice;
  for (const out of choice.chosen) {
    const kept = choice.chosen.filter((one) => one !== out);
    const deficits = together(cover, kept);
    const keptCost = choice.cost - costs[out];
    for (let one = 0; one < cover.belts.length; one++) {
      if (choice.chosen.includes(one) || kept.some((other) => excludes(one, other))) continue;
      const cost = keptCost + costs[one];
      if (best.enough && cost >= best.cost - 1e-9) continue;
      const share = shareOver(cutWith(cover, deficits, cover.belts[one]), cutShare);
      const tried: Choice = {
        chosen: [...kept, one].sort((a, b) => a - b),
        cost,
        overShare: share,
        enough: share >= overShare,
      };
      if (isBetter(tried, best)) best = tried;
    }
  }
  return best;
}

/** Takes out one or two belts and fills up anew. */
function refilled(task: SearchTask, choice: Choice, alone: Float64Array): Choice {
  let best = choice;
  const { chosen } = choice;
  const outs = chosen.flatMap((a, i) => [[a], ...chosen.slice(i + 1).map((b) => [a, b])]);
  for (const out of outs) {
    const kept = chosen.filter((one) => !out.includes(one));
    for (const taste of [FOR_ITS_COST, FOR_ITS_GAIN]) {
      const tried = pruned(task, fillUp(task, kept, taste, alone));
      if (isBetter(tried, best)) best = tried;
    }
  }
  return best;
}

function improved(task: SearchTask, start: Choice, alone: Float64Array): Choice {
  let best = pruned(task, start);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = [swapped, refilled]
      .map((move) => move(task, best, alone))
      .reduce((a, b) => (isBetter(b, a) ? b : a));
    if (!isBetter(next, best)) break;
    best = next;
  }
  return best;
}

/**
 * The best choice that was found; where it is not enough, the one that shelters most ground.
 * @param hints choices that are known to be good at something else
 */
export function searchBelts(task: SearchTask, hints: readonly (readonly number[])[] = []): Choice {
  const { cover, cutShare, costs } = task;
  const none = judge(task, []);
  if (none.enough) return none;
  const alone = gainsAlone(task);
  const promise = cover.belts
    .map((belt, one) => ({ one, gain: nearness(cutWith(cover, cover.standing, belt), cutShare) }))
    .sort((a, b) => b.gain / costs[b.one] - a.gain / costs[a.one] || a.one - b.one);
  const byGain = [...promise].sort((a, b) => b.gain - a.gain || a.one - b.one);
  const starts = new Set<number>();
  for (let i = 0; i < promise.length && starts.size < MOST_STARTS; i++) {
    starts.add(byGain[i].one);
    starts.add(promise[i].one);
  }
  let best = none;
  for (const start of [[], ...[...starts].map((one) => [one])])
    for (const taste of [FOR_ITS_COST, FOR_ITS_GAIN]) {
      const tried = pruned(task, fillUp(task, start, taste, alone));
      if (isBetter(tried, best)) best = tried;
    }
  return [best, ...hints.map((chosen) => judge(task, chosen))]
    .map((start) => improved(task, start, alone))
    .reduce((a, b) => (isBetter(b, a) ? b : a));
}
