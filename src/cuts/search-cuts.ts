/**
 * The best set of cuts that brings the light back, exactly: all sets are gone through by depth first, and a branch is
 * left as soon as it cannot be better than the best that was found, or cannot bring enough light.
 *
 * What a plant may still bring is bounded by what it brings when all others are felled beside it: light let through is a
 * product over plants, so that none ever brings more than then.
 */
import type { Steps } from '../numeric/steps.ts';
import type { CutModel, OptionGain } from './cut-model.ts';

/** Plant and option. */
export type Cut = readonly [plant: number, option: number];

export interface SearchTask {
  readonly model: CutModel;
  /** By spot: what the engine found more (or less) than the model; added to the model's light. */
  readonly correction: Float64Array;
  readonly allowed: (cut: Cut) => boolean;
  /** What a cut costs: the first counts before the second, and so on; at least one of them above 0. */
  readonly costs: (cut: Cut) => readonly number[];
  /** How often somebody goes out for it. */
  readonly works: (cut: Cut) => number;
  /** Sets are looked at that take so many works more than the fewest. */
  readonly moreWorks: number;
}

export interface Choice {
  /** By plant, rising. */
  readonly cuts: readonly Cut[];
  readonly costs: readonly number[];
  /** False: it was given up before all was looked at, so there may be a better one. */
  readonly proven: boolean;
}

/** A winter's cut of more works than this is not searched to the end: a good one is taken instead. Our choice. */
const MOST_WORKS = 8;
/** Sets that are tried before a search is given up: some seconds. */
const MOST_TRIED = 60_000;
const TRIED_A_PAUSE = 100;
const CLOSE = 1e-9;

/** Whether all that is wanted is there. */
export const isEnough = ({ wanted }: CutModel, light: Float64Array): boolean =>
  wanted.every(({ first, end, shareToKeep, spotsNeeded }) => {
    let bright = 0;
    for (let spot = first; spot < end; spot++) if (light[spot] >= shareToKeep) bright++;
    return bright >= spotsNeeded;
  });

/** Below 0: a costs less. */
export function compareCosts(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (Math.abs(a[i] - b[i]) > CLOSE) return a[i] - b[i];
  return 0;
}

/** Light as cuts are made and taken back. */
class Cutting {
  readonly light: Float64Array;
  private readonly slotLight: Float64Array;
  private readonly undo: { gain: OptionGain; slots: Float64Array; spots: Float64Array }[] = [];

  constructor(model: CutModel, correction: Float64Array) {
    this.slotLight = model.slotLight.slice();
    this.light = model.light.map((light, spot) => light + correction[spot]);
  }

  cut(gain: OptionGain): void {
    const { slots, factors, spots, ends } = gain;
    const [wasSlots, wasSpots] = [new Float64Array(slots.length), new Float64Array(spots.length)];
    let k = 0;
    for (let s = 0; s < spots.length; s++) {
      let more = 0;
      for (; k < ends[s]; k++) {
        const was = this.slotLight[slots[k]];
        wasSlots[k] = was;
        this.slotLight[slots[k]] = was * factors[k];
        more += was * (factors[k] - 1);
      }
      wasSpots[s] = this.light[spots[s]];
      this.light[spots[s]] += more;
    }
    this.undo.push({ gain, slots: wasSlots, spots: wasSpots });
  }

  takeBack(): void {
    const last = this.undo.pop();
    if (!last) return;
    const { gain, slots, spots } = last;
    for (let k = 0; k < slots.length; k++) this.slotLight[gain.slots[k]] = slots[k];
    for (let s = 0; s < spots.length; s++) this.light[gain.spots[s]] = spots[s];
  }

  lightOf(slot: number): number {
    return this.slotLight[slot];
  }
}

/** Light with some cuts made. */
export function lightWith(model: CutModel, correction: Float64Array, cuts: readonly Cut[]): Float64Array {
  const cutting = new Cutting(model, correction);
  for (const [plant, option] of cuts) cutting.cut(model.gains[plant][option]);
  return cutting.light;
}

/** For each ray the most that any of some options sets free. */
function most(plant: number, options: readonly OptionGain[], slotSpots: Int32Array): OptionGain {
  if (options.length === 1 && options[0].factors.every((factor) => factor >= 1)) return options[0];
  const best = new Map<number, number>();
  for (const { slots, factors } of options)
    slots.forEach((slot, k) => {
      if (factors[k] > (best.get(slot) ?? 1)) best.set(slot, factors[k]);
    });
  const slots = Int32Array.from([...best.keys()].sort((a, b) => a - b));
  const spots: number[] = [];
  const ends: number[] = [];
  slots.forEach((slot, k) => {
    const spot = slotSpots[slot];
    if (spots[spots.length - 1] !== spot) {
      spots.push(spot);
      ends.push(0);
    }
    ends[ends.length - 1] = k + 1;
  });
  return {
    plant,
    slots,
    factors: Float64Array.from(slots, (slot) => best.get(slot) as number),
    spots: Int32Array.from(spots),
    ends: Int32Array.from(ends),
  };
}

interface PricedCut {
  readonly cut: Cut;
  readonly costs: readonly number[];
  readonly works: number;
}

interface Branch {
  readonly plant: number;
  /** Cheapest first. */
  readonly cuts: readonly PricedCut[];
  /** For each ray the most that any of them sets free. */
  readonly envelope: OptionGain;
  /** By spot, what it brings at most. */
  readonly mostGain: Float64Array;
}

/** Plants with what may be done to each and what it brings at most; the one that brings most first. */
function branchesOf(task: SearchTask): { branches: Branch[]; mostLight: Float64Array } {
  const { model, allowed, costs, works } = task;
  const spotCount = model.light.length;
  const slotSpots = new Int32Array(model.slotLight.length);
  for (const options of model.gains)
    for (const { slots, spots, ends } of options)
      spots.forEach((spot, s) => {
        for (let k = s === 0 ? 0 : ends[s - 1]; k < ends[s]; k++) slotSpots[slots[k]] = spot;
      });
  const plants = model.gains.flatMap((options, plant) => {
    const open = options.flatMap((gain, option): { cut: Cut; gain: OptionGain }[] => {
      const cut: Cut = [plant, option];
      return allowed(cut) && gain.slots.length > 0 ? [{ cut, gain }] : [];
    });
    if (open.length === 0) return [];
    const cuts = open
      .map(({ cut }) => ({ cut, costs: costs(cut), works: works(cut) }))
      .sort((a, b) => compareCosts(a.costs, b.costs) || a.cut[1] - b.cut[1]);
    return [
      {
        plant,
        cuts,
        envelope: most(
          plant,
          open.map(({ gain }) => gain),
          slotSpots,
        ),
      },
    ];
  });
  const all = new Cutting(model, task.correction);
  for (const { envelope } of plants) all.cut(envelope);
  const branches = plants.map(({ plant, cuts, envelope }): Branch => {
    const { slots, factors, spots, ends } = envelope;
    const mostGain = new Float64Array(spotCount);
    let k = 0;
    spots.forEach((spot, s) => {
      for (; k < ends[s]; k++) mostGain[spot] += all.lightOf(slots[k]) * (1 - 1 / factors[k]);
    });
    return { plant, cuts, envelope, mostGain };
  });
  const worth = ({ mostGain }: Branch): number => {
    let sum = 0;
    for (const { first, end, shareToKeep } of model.wanted)
      for (let spot = first; spot < end; spot++)
        if (model.light[spot] < shareToKeep) sum += Math.min(mostGain[spot], shareToKeep - model.light[spot]);
    return sum;
  };
  const worths = new Map(branches.map((branch) => [branch, worth(branch)]));
  branches.sort((a, b) => (worths.get(b) as number) - (worths.get(a) as number));
  return { branches, mostLight: all.light };
}

/** The sum of the `count` largest. @param best room for them */
function sumOfLargest(values: Iterable<number>, best: Float64Array): number {
  best.fill(0);
  for (const value of values) {
    let one = value;
    for (let i = 0; i < best.length && one > 0; i++) if (one > best[i]) [best[i], one] = [one, best[i]];
  }
  return best.reduce((sum, one) => sum + one, 0);
}

/**
 * Whether enough could be there if `count` more of some plants were cut. Two bounds: at each spot those that bring most
 * there; and for all spots of a patch together those that bring most of what the nearest ones are short of.
 */
function mayBeEnough(
  { wanted }: CutModel,
  light: Float64Array,
  mostLight: Float64Array,
  branches: readonly Branch[],
  count: number,
): boolean {
  const best = new Float64Array(count);
  return wanted.every(({ first, end, shareToKeep, spotsNeeded }) => {
    const short: number[] = [];
    const brings = new Float64Array(branches.length);
    let bright = 0;
    for (let spot = first; spot < end; spot++) {
      const missing = shareToKeep - light[spot];
      if (missing <= 0) {
        bright++;
        continue;
      }
      if (mostLight[spot] < shareToKeep - CLOSE) continue;
      best.fill(0);
      for (let b = 0; b < branches.length; b++) {
        let gain = branches[b].mostGain[spot];
        for (let i = 0; i < count && gain > 0; i++) if (gain > best[i]) [best[i], gain] = [gain, best[i]];
      }
      let reach = 0;
      for (let i = 0; i < count; i++) reach += best[i];
      if (reach < missing - CLOSE) continue;
      short.push(missing);
      for (let b = 0; b < branches.length; b++) brings[b] += Math.min(missing, branches[b].mostGain[spot]);
    }
    const more = spotsNeeded - bright;
    if (more <= 0) return true;
    if (short.length < more) return false;
    short.sort((a, b) => a - b);
    let least = 0;
    for (let i = 0; i < more; i++) least += short[i];
    return sumOfLargest(brings, best) >= least - CLOSE;
  });
}

/** How far all spots that count are from what they must keep. */
const shortOf = ({ wanted }: CutModel, light: Float64Array): number =>
  wanted.reduce((sum, { first, end, shareToKeep, spotsNeeded }) => {
    const short = Array.from(light.subarray(first, end), (one) => Math.max(0, shareToKeep - one));
    return (
      sum +
      short
        .sort((a, b) => a - b)
        .slice(0, spotsNeeded)
        .reduce((a, b) => a + b, 0)
    );
  }, 0);

/** Cuts one by one what brings most for its works until it is enough, then leaves out what is not needed. */
function goodChoice(task: SearchTask, branches: readonly Branch[]): Choice | null {
  const { model, correction, costs, works } = task;
  const shortWith = (cuts: readonly Cut[]) => shortOf(model, lightWith(model, correction, cuts));
  let cuts: Cut[] = [];
  let short = shortWith(cuts);
  while (short > 0) {
    const open = branches.filter(({ plant }) => !cuts.some(([cut]) => cut === plant));
    const tried = open.flatMap((branch) =>
      branch.cuts.map(({ cut }) => ({ cut, left: shortWith([...cuts, cut]) })),
    );
    const worth = ({ cut, left }: (typeof tried)[number]) => (short - left) / works(cut);
    if (tried.length === 0) return null;
    const best = tried.reduce((a, b) => (worth(b) > worth(a) ? b : a));
    if (!(best.left < short)) return null;
    cuts.push(best.cut);
    short = best.left;
  }
  for (const cut of [...cuts].sort((a, b) => compareCosts(costs(b), costs(a)))) {
    const without = cuts.filter((one) => one !== cut);
    if (shortWith(without) === 0) cuts = without;
  }
  return { cuts: cuts.sort((a, b) => a[0] - b[0]), costs: sumOf(cuts.map(costs)), proven: false };
}

const sumOf = (costs: readonly (readonly number[])[]): number[] =>
  (costs[0] ?? []).map((_, i) => costs.reduce((sum, one) => sum + one[i], 0));

/**
 * The cheapest set of cuts that is enough; null: none is, or none was found where all could not be looked at. All sets
 * are looked at up to so many works beyond the fewest that are enough: first which plants, each cut as far as it may be;
 * then, where that is enough, what is done to each of them.
 */
export function* searchCuts(task: SearchTask): Steps<Choice | null> {
  const { model } = task;
  const cutting = new Cutting(model, task.correction);
  if (isEnough(model, cutting.light)) return { cuts: [], costs: [], proven: true };
  const { branches, mostLight } = branchesOf(task);
  if (!isEnough(model, mostLight)) return null;
  const search = new Search(task, branches, mostLight);
  let works = 0;
  while (!search.best && !search.gaveUp && works < MOST_WORKS) yield* search.plants(++works);
  if (search.best && task.moreWorks > 0) yield* search.plants(works + task.moreWorks);
  const { best, gaveUp } = search;
  return best ? { ...best, proven: !gaveUp } : goodChoice(task, branches);
}

class Search {
  best: Choice | null = null;
  gaveUp = false;
  private tried = 0;
  private readonly whole: Cutting;
  private readonly single: Cutting;

  constructor(
    private readonly task: SearchTask,
    private readonly branches: readonly Branch[],
    private readonly mostLight: Float64Array,
  ) {
    this.whole = new Cutting(task.model, task.correction);
    this.single = new Cutting(task.model, task.correction);
  }

  /** Goes through the sets of plants that take at most so many works. */
  *plants(works: number, from = 0, set: readonly Branch[] = []): Steps<void> {
    const { model } = this.task;
    const { light } = this.whole;
    if (set.length > 0 && isEnough(model, light)) this.options(works, set);
    const left = Math.min(works - set.length, this.branches.length - from);
    if (left === 0) return;
    const rest = this.branches.slice(from);
    if (!isEnough(model, light) && !mayBeEnough(model, light, this.mostLight, rest, left)) return;
    for (let b = from; b < this.branches.length && !this.gaveUp; b++) {
      const next = [...set, this.branches[b]];
      if (!this.isCheaper(sumOf(next.map(({ cuts }) => cuts[0].costs)))) continue;
      this.gaveUp ||= ++this.tried > MOST_TRIED;
      if (this.tried % TRIED_A_PAUSE === 0) yield this.tried / MOST_TRIED;
      this.whole.cut(this.branches[b].envelope);
      yield* this.plants(works, b + 1, next);
      this.whole.takeBack();
    }
  }

  /** Goes through what may be done to each plant of a set; those not decided on yet are cut as far as they may be. */
  private options(worksLeft: number, set: readonly Branch[], chosen: readonly PricedCut[] = []): void {
    const rest = set.slice(chosen.length + 1);
    const cheapest = rest.map(({ cuts }) => cuts[0].costs);
    for (const next of set[chosen.length].cuts) {
      if (next.works > worksLeft - rest.length) continue;
      const made = [...chosen, next];
      if (!this.isCheaper(sumOf([...made.map(({ costs }) => costs), ...cheapest]))) continue;
      this.gaveUp ||= ++this.tried > MOST_TRIED;
      if (this.gaveUp) return;
      this.single.cut(this.task.model.gains[next.cut[0]][next.cut[1]]);
      for (const { envelope } of rest) this.single.cut(envelope);
      const enough = isEnough(this.task.model, this.single.light);
      for (const _ of rest) this.single.takeBack();
      if (enough && rest.length > 0) this.options(worksLeft - next.works, set, made);
      else if (enough)
        this.best = {
          cuts: made.map(({ cut }) => cut).sort((a, b) => a[0] - b[0]),
          costs: sumOf(made.map(({ costs }) => costs)),
          proven: true,
        };
      this.single.takeBack();
    }
  }

  private isCheaper(costs: readonly number[]): boolean {
    return !this.best || compareCosts(costs, this.best.costs) < 0;
  }
}
