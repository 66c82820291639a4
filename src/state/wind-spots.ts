import type { StoreApi } from 'zustand/vanilla';
import type { LonLat } from '../geo/frame.ts';
import { type FindablePoint, findablePoints } from '../outside/findable-points.ts';
import { labelOf } from '../scene/things.ts';
import { setProperties } from '../site/actions/set-properties.ts';
import { takeHeight } from '../site/actions/take-height.ts';
import type { FeatureId, SiteDocument, SiteFeature } from '../site/document.ts';
import { READ_FROM_WIND } from '../site/height-readings.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import { nextDay } from '../sun/day-words.ts';
import { isKeptSpot, type KeptSpot, keptSpots, type MeterReading } from '../windspots/kept-spots.ts';
import { type ShownScore, scoreSentences } from '../windspots/score-words.ts';
import { scoredReadings } from '../windspots/scored-readings.ts';
import { canShelter } from '../windspots/sheltering-feature.ts';
import { type SpotPlan, USUAL_HEIGHTS } from '../windspots/spot-plan.ts';
import { usualWind } from '../windspots/usual-wind.ts';
import { keepMeters, writeDown } from '../windspots/write-down.ts';
import type { App, AppState } from './model.ts';
import { siteOutdoors } from './shadow-stakes.ts';

/** What the open wind spots say; null parts where there is none. */
export interface WindSpotsAnswer {
  /** The last one for this belt, while the next is worked out. */
  readonly plan: SpotPlan | null;
  /** The plan is from before the last change, and the next is being worked out. */
  readonly stale: boolean;
  /** Why there is no plan. */
  readonly wrong: string | null;
  /** How far the model missed what was written down and read; null where nothing was written down. */
  readonly score: ShownScore | null;
  /** Why it is not said yet what explains the readings; null: it is said. */
  readonly unexplained: string | null;
  /** Points that can be taped from. */
  readonly points: readonly FindablePoint[];
}

const INPUTS = [
  'document',
  'layout',
  'frame',
  'ground',
  'windSpots',
  'selection',
  'spotPlan',
  'spotScore',
] as const;
let last: { readonly state: AppState; readonly answer: WindSpotsAnswer | null } | null = null;

/**
 * The answer for what is asked, put together again only when that, the site or what the workers found has changed:
 * panel, map and page ask for the same. Null where no spots are open for the chosen thing.
 */
export function windSpotsAnswer(state: AppState): WindSpotsAnswer | null {
  const before = last;
  if (before && INPUTS.every((key) => before.state[key] === state[key])) return before.answer;
  const answer = putTogether(state);
  last = { state, answer };
  return answer;
}

/** What is asked of the open wind spots; null: none are open for the chosen thing. */
export function spotsAsked(state: AppState) {
  const { windSpots, selection } = state;
  const site = siteOutdoors(state);
  if (!windSpots || windSpots.of !== selection || !site) return null;
  const { of, ...wish } = windSpots;
  const feature = site.document.features.find(({ id }) => id === of);
  if (!feature) return null;
  return { site, of, wish, label: labelOf(site.document, feature), kept: keptSpots(site.document, of) };
}

function putTogether(state: AppState): WindSpotsAnswer | null {
  const asked = spotsAsked(state);
  if (!asked) return null;
  const { site, of, label, kept } = asked;
  const { spotPlan, spotScore } = state;
  const ofThis = <Found extends { readonly of: FeatureId; readonly frame: unknown }>(found: Found | null) =>
    found?.of === of && found.frame === state.frame ? found : null;
  const failed = spotPlan.status === 'failed';
  const explained =
    spotScore.status === 'ready' && !spotScore.stale ? ofThis(spotScore.result)?.score : undefined;
  return {
    plan: failed ? null : (ofThis(spotPlan.result)?.plan ?? null),
    stale: spotPlan.stale,
    wrong: failed ? spotPlan.message : null,
    score: kept.length > 0 ? (explained ?? scoredReadings(label, kept)) : null,
    unexplained: explained
      ? null
      : spotScore.status === 'failed'
        ? spotScore.message
        : 'What would explain that is being worked out.',
    points: findablePoints(site.document, site.frame, site.layout).points,
  };
}

/** Whose wind spots a feature leads to, how many readings are kept and how many are waited for. */
export function windSpotsOf(
  document: SiteDocument,
  feature: SiteFeature,
): { readonly of: FeatureId; readonly readings: number; readonly waiting: number } | null {
  const wanted = isKeptSpot(feature) ? String(feature.properties.of) : String(feature.id);
  const belt = document.features.find((each) => String(each.id) === wanted && canShelter(each));
  if (!belt) return null;
  const kept = keptSpots(document, belt.id);
  const waiting = kept.filter(({ reading }) => reading === null).length;
  return { of: belt.id, readings: kept.length - waiting, waiting };
}

/** Opens the wind spots of a belt: tomorrow, square to it, in a wind as the site has it. What waits for a reading is asked for again. */
export function openWindSpots(app: App, of: FeatureId): void {
  const belt = app.document.features.find(({ id }) => id === of);
  if (!belt || !canShelter(belt)) return;
  const waits = keptSpots(app.document, of).find(({ reading }) => reading === null)?.expected;
  const tomorrow = nextDay(clockOfUtc(Date.now(), app.document.site.timeZone).date);
  app.select(of);
  app.show({
    stakes: null,
    windSpots: {
      of,
      date: waits?.date ?? tomorrow,
      wind: waits
        ? { fromDeg: waits.windFromDeg, speedMps: waits.windMps }
        : usualWind(belt, app.windClimate),
      heights: USUAL_HEIGHTS,
      alongM: null,
      places: [],
      line: null,
    },
  });
}

/** One more place of which the wind is asked; the panel comes back with it. */
export function addSpot(app: App, place: LonLat): void {
  const { windSpots } = app;
  if (!windSpots || windSpots.places.some((each) => each === place)) return;
  app.show({ windSpots: { ...windSpots, places: [...windSpots.places, place] }, panelOpen: true });
}

/** Writes down what is expected at the spots of a plan; one step to undo. */
export function writeSpotsDown(app: App, plan: SpotPlan): void {
  app.edit('Write down the wind that is expected', (document) => writeDown(document, plan));
  app.say({
    tone: 'plain',
    text: `Written down for ${plan.spots.length} ${plan.spots.length === 1 ? 'spot' : 'spots'}: it stays as it stands, whatever is read.`,
  });
}

/**
 * Keeps what two meters showed beside what was written down, one step to undo, and says how far the model has missed.
 * @returns false when it could not be kept; what was wrong has been said.
 */
export function keepWindReading(store: StoreApi<App>, kept: KeptSpot, reading: MeterReading): boolean {
  const { document, edit, say, unitSystem } = store.getState();
  edit('Keep a reading of the wind', (before) => keepMeters(before, kept.id, reading));
  if (store.getState().document === document) return false;
  const score = windSpotsAnswer(store.getState())?.score;
  const [first] = score ? scoreSentences(score, unitSystem === 'metric' ? 'm' : 'ft') : [];
  if (first) say({ tone: 'plain', text: `Kept. ${first}` });
  return true;
}

/** What the readings would have the site say of the belt, where they say it. */
export interface BeltFinding {
  readonly heightM?: number;
  readonly porosity?: number;
}

export function beltFindings({ fits, belt }: ShownScore): BeltFinding {
  const factorOf = (what: 'height' | 'foliage') => fits?.find((fit) => fit.what === what)?.factor;
  const [height, foliage] = [factorOf('height'), factorOf('foliage')];
  return {
    ...(belt && height !== undefined ? { heightM: height * belt.heightM } : {}),
    ...(belt && foliage !== undefined ? { porosity: belt.porosity ** foliage } : {}),
  };
}

/** Gives the belt the height that the readings fit; one step to undo. */
export function acceptBeltHeight(app: App, of: FeatureId, { belt }: ShownScore, heightM: number): void {
  if (!belt) return;
  app.edit('Take a height from the wind', (document) =>
    takeHeight(document, of, { heightM, measuredYear: belt.heightYear, method: READ_FROM_WIND }),
  );
}

/** Gives the belt the daylight through it that the readings fit, in the leaf they were taken in; one step to undo. */
export function acceptPorosity(app: App, of: FeatureId, { belt }: ShownScore, porosity: number): void {
  const isWall = app.document.features.find(({ id }) => id === of)?.properties.kind === 'wall';
  const key = isWall ? 'opticalPorosity' : belt?.inLeaf ? 'opticalPorosityLeafOn' : 'opticalPorosityLeafOff';
  app.edit('Take an openness from the wind', (document) =>
    setProperties(document, [of], { [key]: Number(porosity.toFixed(2)) }),
  );
}
