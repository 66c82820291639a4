import type { StoreApi } from 'zustand/vanilla';
import { type FindablePoint, findablePoints } from '../outside/findable-points.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { addFeature } from '../site/actions/add-feature.ts';
import { takeHeight } from '../site/actions/take-height.ts';
import type { FeatureId, SiteDocument, SiteFeature } from '../site/document.ts';
import { planStakes } from '../stakes/plan-stakes.ts';
import { readingToKeep, type SeenAt, shadowReadings } from '../stakes/readings.ts';
import { type StakeScore, scoreReadings } from '../stakes/score-readings.ts';
import { scoreSentences } from '../stakes/score-words.ts';
import { LONGEST_M, type Stake, type StakePlan } from '../stakes/stake-plan.ts';
import { canBeStaked } from '../stakes/staked-feature.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import { nextDay } from '../sun/day-words.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { App, AppState } from './model.ts';

/** What the open shadow stakes say; null parts where there is none. */
export interface StakesAnswer {
  readonly plan: StakePlan | null;
  /** Why there is no plan. */
  readonly wrong: string | null;
  /** How far the model missed the readings kept in the site; null without readings. */
  readonly score: StakeScore | null;
  /** Points that can be taped from. */
  readonly points: readonly FindablePoint[];
}

const INPUTS = ['document', 'layout', 'frame', 'ground', 'stakes', 'selection'] as const;
let last: { readonly state: AppState; readonly answer: StakesAnswer | null } | null = null;

/**
 * The answer for what is asked, worked out again only when that or the site has changed: panel, map and page ask for
 * the same. Null where no stakes are open for the chosen thing.
 */
export function stakesAnswer(state: AppState): StakesAnswer | null {
  const before = last;
  if (before && INPUTS.every((key) => before.state[key] === state[key])) return before.answer;
  const answer = workedOut(state);
  last = { state, answer };
  return answer;
}

/** The site as what is taped outside asks for it; null while its ground is not laid out. */
export const siteOutdoors = ({ document, layout, frame, ground }: AppState): SiteOutdoors | null =>
  ground && { document, layout, frame, ground };

function workedOut(state: AppState): StakesAnswer | null {
  const { stakes, selection } = state;
  const site = siteOutdoors(state);
  if (!stakes || stakes.of !== selection || !site) return null;
  const { points } = findablePoints(site.document, site.frame, site.layout);
  const readings = shadowReadings(site.document, stakes.of);
  const score = readings.length > 0 ? orNull(() => scoreReadings(site, stakes.of, readings)) : null;
  try {
    return { plan: planStakes(site, stakes.of, stakes), wrong: null, score, points };
  } catch (reason) {
    if (!(reason instanceof BadInputError)) throw reason;
    return { plan: null, wrong: reason.message, score, points };
  }
}

function orNull<T>(work: () => T): T | null {
  try {
    return work();
  } catch (reason) {
    if (!(reason instanceof BadInputError)) throw reason;
    return null;
  }
}

/** Opens the stakes of a thing for a day; without one for tomorrow, as the calendar is there. */
export function openStakes(app: App, of: FeatureId, day?: string): void {
  const tomorrow = () => nextDay(clockOfUtc(Date.now(), app.document.site.timeZone).date);
  app.select(of);
  app.show({
    stakes: { of, date: day ?? tomorrow(), times: null, longestM: LONGEST_M, line: null },
    windSpots: null,
  });
}

/** Whose stakes a feature leads to, how many readings are kept of them, and the day of the one that it is. */
export function stakesOf(
  document: SiteDocument,
  feature: SiteFeature,
): { readonly of: FeatureId; readonly readings: number; readonly day?: string } | null {
  const { properties } = feature;
  const isReading = properties.kind === 'measure' && properties.quantity === 'shadow';
  const wanted = isReading ? String(properties.of) : String(feature.id);
  const caster = document.features.find((each) => String(each.id) === wanted && canBeStaked(each));
  if (!caster) return null;
  const readings = shadowReadings(document, caster.id).length;
  return { of: caster.id, readings, day: isReading ? properties.date?.slice(0, 10) : undefined };
}

/**
 * Keeps where the tip was seen, one step to undo, and says how far the model has missed so far.
 * @returns false when it could not be kept; what was wrong has been said.
 */
export function keepReading(
  store: StoreApi<App>,
  plan: StakePlan,
  stake: Stake,
  time: string,
  seen: SeenAt,
): boolean {
  const { document, edit, say, unitSystem } = store.getState();
  edit(
    `Keep the shadow’s tip at ${time}`,
    (before) => addFeature(before, readingToKeep(plan, stake, time, seen)).document,
  );
  if (store.getState().document === document) return false;
  const score = stakesAnswer(store.getState())?.score;
  if (score)
    say({
      tone: 'plain',
      text: `Kept. ${scoreSentences(score, unitSystem === 'metric' ? 'm' : 'ft').join(' ')}`,
    });
  return true;
}

/** Gives the thing the height that the readings fit; one step to undo. */
export const acceptHeight = (app: App, id: FeatureId, height: NonNullable<StakeScore['height']>): void =>
  app.edit('Take a measured height', (document) =>
    takeHeight(document, id, { ...height, method: 'shadow stakes' }),
  );
