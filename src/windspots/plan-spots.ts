import { type LocalXY, type LonLat, toLocal, toLonLat } from '../geo/frame.ts';
import { runToEnd, type Steps } from '../numeric/steps.ts';
import { findablePoints } from '../outside/findable-points.ts';
import { groundCautions } from '../outside/ground-cautions.ts';
import { offsets, tapeCautions } from '../outside/offsets.ts';
import { readDate } from '../outside/read-date.ts';
import { referenceLine } from '../outside/reference-line.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import type { FeatureId } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';
import { directionWord } from '../units/compass.ts';
import { metPorosity } from '../wind/barrier-effects.ts';
import { beaufortForce } from '../wind/beaufort.ts';
import { OPEN_ROUGHNESS_M } from '../wind/profile.ts';
import { USUAL_SHELTER_OPTIONS } from '../wind/shelter-guesses.ts';
import { porosityAtLeafShare } from '../wind/shelter-phases.ts';
import { type BeltCrossing, beltCrossing } from './belt-crossing.ts';
import { expectedAt } from './expected-range.ts';
import { openAtMeters } from './hand-meters.ts';
import { type LineAcross, lineAcross } from './line-across.ts';
import { openPlace } from './open-place.ts';
import { type SceneOnDay, sceneOnDay } from './scene-on-day.ts';
import { rayOf } from './share-at.ts';
import {
  METER_HEIGHT_M,
  type NoSpot,
  type SpotBelt,
  type SpotPlan,
  type SpotWish,
  type WindSpot,
} from './spot-plan.ts';
import { wrongWith } from './what-is-wrong.ts';

/** From here on whole trees move and walking takes effort: nobody stands near trees with a meter. Beaufort 7. */
const TOO_STRONG_MPS = 13.9;
/** Below this hand meters stall and the direction wanders. Beaufort 3. */
const STEADY_MPS = 3.4;
/** A wind that can be felt. Beaufort 2. */
const LEAST_MPS = 1.6;
/** Within a fall of the trees something may come down on who stands there, belt heights. */
const FALL_H = 1;

/** Roughness of the site's own land, as its wind says it or as open farmland. */
export const roughnessOf = ({ document }: SiteOutdoors): number =>
  document.site.wind?.siteRoughnessM ?? document.site.wind?.measuredRoughnessM ?? OPEN_ROUGHNESS_M;

export interface PlanRequest {
  readonly site: SiteOutdoors;
  readonly of: FeatureId;
  readonly wish: SpotWish;
}

/** Share of the work that is done when the spots are known to be good or not. */
const CHOSEN_SHARE = 0.2;

/**
 * What two hand meters should show behind a belt in one wind on one day, at spots that can be found with two tapes;
 * yields after each spot.
 * @throws BadInputError for a wish that cannot be read, a thing that shelters nothing, or a wind without any good spot.
 */
export function* computeSpotPlan({ site, of, wish }: PlanRequest): Steps<SpotPlan> {
  const { document, frame, ground, layout } = site;
  const date = readDate(wish.date);
  checkWind(wish);
  const day = sceneOnDay(site, of, date);
  const ray = rayOf(day, wish.wind.fromDeg);
  const across = lineAcross(day, ray, wish.alongM);
  checkBelt(day, across, wish);
  const roughnessM = roughnessOf(site);
  const openMps = openAtMeters(wish.wind.speedMps, roughnessM);
  const heightM = day.belt.heightM[0];
  const without: NoSpot[] = [];
  const good: { words: string; at: LocalXY; crossing: BeltCrossing }[] = [];
  const asked = wanted(site, across, wish);
  for (const [i, { words, at }] of asked.entries()) {
    yield (CHOSEN_SHARE * i) / asked.length;
    const crossing = beltCrossing(day.belt, ray, at);
    const why = wrongWith(day, at, wish.wind, crossing);
    if (why !== null || !crossing) without.push({ words, why: why ?? '' });
    else good.push({ words, at, crossing });
  }
  if (good.length === 0)
    throw new BadInputError(
      `No spot behind ${day.label} is good in a wind from the ${directionWord(wish.wind.fromDeg)}: ${listed(without)}; expected another wind, another place along it, or other distances.`,
    );
  const places = good.map(({ at }) => toLonLat(frame, at));
  const found = findablePoints(document, frame, layout);
  const line = referenceLine(found, wish.line, places, frame, ground);
  const cautionsAt = groundCautions(site);
  const spots: WindSpot[] = [];
  for (const [i, { words, at, crossing }] of good.entries()) {
    yield CHOSEN_SHARE + ((1 - CHOSEN_SHARE) * i) / good.length;
    const distanceH = crossing.distanceM / heightM;
    const taped = offsets(site, line, places[i]);
    spots.push({
      number: i + 1,
      words,
      lonLat: places[i],
      crossing: toLonLat(frame, crossing.at),
      distanceM: crossing.distanceM / day.localPerM,
      distanceH,
      offSquareDeg: crossing.offSquareDeg,
      expected: expectedAt(day, at, {
        wind: wish.wind,
        openMps,
        roughnessM,
        porosity: porosityMet(day, crossing.offSquareDeg),
        distanceH,
        offSquareDeg: crossing.offSquareDeg,
        lengthM: across.lineM,
      }),
      ...taped,
      cautions: [
        ...(distanceH * Math.cos((crossing.offSquareDeg * Math.PI) / 180) < FALL_H &&
        day.feature.properties.kind === 'belt'
          ? ['within reach of the trees: not in strong wind, and never under dead wood']
          : []),
        ...tapeCautions(taped),
        ...cautionsAt(places[i]),
      ],
    });
  }
  yield 1;
  const belt = beltOf(day, across, toLonLat(frame, across.placeAt(0)));
  return {
    belt,
    date,
    wind: wish.wind,
    openMps,
    alongM: across.alongM,
    points: found.points,
    line,
    spots,
    without,
    open: openPlace(site, day, found.points, wish.wind, belt.middle),
    notes: notesOf(day, across, wish),
  };
}

/** The same in one go. */
export const planSpots = (site: SiteOutdoors, of: FeatureId, wish: SpotWish): SpotPlan =>
  runToEnd(computeSpotPlan({ site, of, wish }));

/** Places with the same fault together: "2 and 5 heights behind: the wind passes it by". */
function listed(without: readonly NoSpot[]): string {
  const words = new Map<string, string[]>();
  for (const each of without) words.set(each.why, [...(words.get(each.why) ?? []), each.words]);
  return without.length === 0
    ? 'no distance and no place was asked for'
    : [...words].map(([why, places]) => `${places.join(', ')}: ${why}`).join('; ');
}

/** Every place asked for: heights out from the belt, then places pointed at. */
function wanted({ frame }: SiteOutdoors, across: LineAcross, { heights, places }: SpotWish) {
  const behind = [...new Set(heights)]
    .sort((a, b) => a - b)
    .map((each) => ({
      words: `${each} ${each === 1 ? 'height' : 'heights'} behind`,
      at: across.placeAt(each),
    }));
  const pointed = places.map((place: LonLat, i) => ({
    words: places.length === 1 ? 'the chosen place' : `chosen place ${i + 1}`,
    at: toLocal(frame, place),
  }));
  return [...behind, ...pointed];
}

function checkWind({ wind: { fromDeg, speedMps }, heights }: SpotWish): void {
  if (!(fromDeg >= 0 && fromDeg <= 360))
    throw new BadInputError(
      `The wind comes from ${fromDeg}; expected 0 to 360 degrees clockwise from true north.`,
    );
  if (!(speedMps >= LEAST_MPS))
    throw new BadInputError(
      `The wind is ${speedMps} m/s; expected at least ${LEAST_MPS} m/s at 10 m (Beaufort 2): less turns no hand meter.`,
    );
  if (speedMps >= TOO_STRONG_MPS)
    throw new BadInputError(
      `The wind is ${speedMps} m/s (Beaufort ${beaufortForce(speedMps).force}); expected less than ${TOO_STRONG_MPS} m/s: nobody should stand near trees with a meter in a gale.`,
    );
  const wrong = heights.find((each) => !(each > 0 && each <= 35));
  if (wrong !== undefined)
    throw new BadInputError(`A distance is ${wrong} heights; expected more than 0 and at most 35.`);
}

function checkBelt({ belt, label }: SceneOnDay, { lineM }: LineAcross, { alongM }: SpotWish): void {
  if (alongM !== null && !(alongM >= 0 && alongM <= lineM + 0.005))
    throw new BadInputError(`The place is ${alongM} m along ${label}; expected 0 to ${lineM.toFixed(1)} m.`);
  if (belt.heightM[0] < 2 * METER_HEIGHT_M)
    throw new BadInputError(
      `${label} is ${belt.heightM[0].toFixed(1)} m tall on that day; expected at least ${2 * METER_HEIGHT_M} m, twice as high as the meters are held.`,
    );
}

/** Porosity that the wind meets on the day: along its slanting way, opened by a raised foot. */
function porosityMet({ belt, leafShare }: SceneOnDay, offSquareDeg: number): number {
  const cosine = Math.cos((offSquareDeg * Math.PI) / 180);
  return metPorosity(belt, leafShare, cosine, belt.heightM[0], USUAL_SHELTER_OPTIONS);
}

const beltOf = (day: SceneOnDay, { lineM }: LineAcross, middle: LonLat): SpotBelt => ({
  id: day.feature.id,
  kind: day.feature.properties.kind,
  label: day.label,
  heightM: day.belt.heightM[0],
  heightYear: day.beltYear,
  porosity: porosityAtLeafShare(day.belt.porosityOn, day.belt.porosityOff, day.leafShare),
  leafShare: day.leafShare,
  lineM,
  middle,
});

/** Shorter belts are beyond what was measured, belt heights (NRCS: length at least ten times the height). */
const LEAST_LENGTH_H = 10;

function notesOf(day: SceneOnDay, { lineM }: LineAcross, { wind }: SpotWish): string[] {
  const heightM = day.belt.heightM[0];
  return [
    ...(wind.speedMps < STEADY_MPS
      ? ['So light a wind wanders and hand meters stall in it: wait for Beaufort 3, when twigs never rest.']
      : []),
    ...(lineM < LEAST_LENGTH_H * heightM
      ? [
          `It is ${(lineM / heightM).toFixed(0)} heights long; the belts that were measured were ten heights and more. Far behind so short a belt the range is our guess.`,
        ]
      : []),
    ...(day.leafShare > 0 && day.leafShare < 1
      ? [
          'Its leaves are coming or falling on that day: a week earlier or later it lets through another share.',
        ]
      : []),
  ];
}
