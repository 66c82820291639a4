import type { Barrier } from '../crowns/barrier.ts';
import type { LeafPhases } from '../crowns/leaf-phases.ts';

/** Floor of a living thing's optical porosity while its leaf state is between the two given ones. */
const LEAST_POROSITY = 0.01;

/** A leaf state of all barriers, and how much of each season it takes. */
export interface ShelterPhase {
  /** Leaf share of each leaf class. */
  readonly leafShare: Float32Array;
  readonly growingWeight: number;
  readonly restWeight: number;
}

export interface ShelterSeasons {
  readonly phases: readonly ShelterPhase[];
  readonly growingHours: number;
  readonly restHours: number;
}

/**
 * Optical porosity at a leaf share: optical depths mix linearly, so ln p = s ln p_on + (1 - s) ln p_off.
 * What is solid in both states stays solid.
 */
export function porosityAtLeafShare(porosityOn: number, porosityOff: number, leafShare: number): number {
  if (leafShare >= 1 || porosityOn === porosityOff) return porosityOn;
  if (leafShare <= 0) return porosityOff;
  const on = Math.max(LEAST_POROSITY, porosityOn);
  const off = Math.max(LEAST_POROSITY, porosityOff);
  return Math.exp(leafShare * Math.log(on) + (1 - leafShare) * Math.log(off));
}

/** Most leaf states that are computed apart; more are gathered, by how far the leaves are out. */
export type MostLeafStates = 4 | 6;

/**
 * Cuts the year into the leaf states that differ for these barriers and trees, with their weights in the growing season
 * and in the rest by days. A season without a day takes the weights of the whole year and no hours.
 */
export function shelterSeasons(
  leaf: LeafPhases,
  growingDay: Uint8Array,
  barriers: readonly Barrier[],
  trees: readonly { readonly leafClass: number; readonly areaOnM2: number; readonly areaOffM2: number }[],
  most: MostLeafStates,
): ShelterSeasons {
  const days = growingDay.length;
  if (leaf.phaseOfDay.length !== days || (days !== 365 && days !== 366)) {
    throw new RangeError(`A year has 365 or 366 days; got ${days} and ${leaf.phaseOfDay.length}.`);
  }
  const matters = new Uint8Array(leaf.classCount);
  for (const barrier of barriers) {
    if (barrier.porosityOn !== barrier.porosityOff) matters[barrier.leafClass] = 1;
  }
  for (const tree of trees) if (tree.areaOnM2 !== tree.areaOffM2) matters[tree.leafClass] = 1;
  for (let c = 0; c < leaf.classCount; c++) if (!changes(leaf, c)) matters[c] = 0;
  const found = new Map<string, { phase: number; growing: number; rest: number }>();
  let growingDays = 0;
  for (let day = 0; day < days; day++) {
    const phase = leaf.phaseOfDay[day];
    let key = '';
    for (let c = 0; c < leaf.classCount; c++) {
      if (matters[c]) key += `${leaf.leafShare[phase * leaf.classCount + c].toFixed(4)} `;
    }
    const state = found.get(key) ?? { phase, growing: 0, rest: 0 };
    if (growingDay[day]) {
      state.growing++;
      growingDays++;
    } else state.rest++;
    found.set(key, state);
  }
  const restDays = days - growingDays;
  const states = [...found.values()].map(({ phase, growing, rest }) => ({
    leafShare: leaf.leafShare.slice(phase * leaf.classCount, (phase + 1) * leaf.classCount),
    growing,
    rest,
  }));
  const phases = gatherStates(states, matters, most).map(({ leafShare, growing, rest }) => ({
    leafShare,
    growingWeight: growingDays > 0 ? growing / growingDays : (growing + rest) / days,
    restWeight: restDays > 0 ? rest / restDays : (growing + rest) / days,
  }));
  return { phases, growingHours: growingDays * 24, restHours: restDays * 24 };
}

/** Whether a class is in more than one leaf state in the year. */
function changes({ phaseCount, classCount, leafShare }: LeafPhases, leafClass: number): boolean {
  for (let phase = 1; phase < phaseCount; phase++)
    if (leafShare[phase * classCount + leafClass] !== leafShare[leafClass]) return true;
  return false;
}

interface LeafState {
  readonly leafShare: Float32Array;
  /** Days of each season in this state. */
  readonly growing: number;
  readonly rest: number;
}

/**
 * Bare, full, and for each season a state with less and one with more than half of the leaves (of four in all: one
 * state), which is the mean of those it gathers by their days in that season. Leaves turn for some two months of a year
 * and shelter changes little within a state: a season's share of open wind moves by less than 0.002 (of four: 0.006).
 */
function gatherStates(
  states: readonly LeafState[],
  matters: Uint8Array,
  most: MostLeafStates,
): readonly LeafState[] {
  if (states.length <= most) return states;
  const changing = matters.reduce((sum, one) => sum + one, 0);
  const gathered = new Map<
    string,
    { days: number; shareDays: Float64Array; growing: number; rest: number }
  >();
  for (const state of states) {
    const inLeaf = state.leafShare.reduce((sum, share, c) => sum + share * matters[c], 0) / changing;
    const turning = inLeaf > 0 && inLeaf < 1;
    for (const season of ['growing', 'rest'] as const) {
      const days = state[season];
      if (days === 0) continue;
      const half = most === 6 && inLeaf < 0.5;
      const key = turning ? `${season} ${half}` : `${inLeaf}`;
      const group = gathered.get(key) ?? {
        days: 0,
        shareDays: new Float64Array(matters.length),
        growing: 0,
        rest: 0,
      };
      state.leafShare.forEach((share, c) => {
        group.shareDays[c] += days * share;
      });
      group.days += days;
      group[season] += days;
      gathered.set(key, group);
    }
  }
  return [...gathered.values()].map(({ days, shareDays, growing, rest }) => ({
    leafShare: Float32Array.from(shareDays, (sum) => sum / days),
    growing,
    rest,
  }));
}
