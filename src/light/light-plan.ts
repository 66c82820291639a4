/**
 * What has to be looked at for a year's light: a list of directions, each with the leaf states it is needed in and
 * what a ray that gets through counts for; and the totals on open ground, from which losses are taken.
 */
import { lastAnswers } from '../numeric/last-answers.ts';
import { SKY_DIRECTION_COUNT, skyDirections } from '../sun/sky-directions.ts';
import {
  QUADRATURE_STEPS,
  type QuadratureSteps,
  WEIGHT_BEAM_GROWING,
  WEIGHT_BEAM_RESTING,
  WEIGHT_GROWING_HOURS,
  WEIGHT_STRIDE,
  yearQuadrature,
} from '../sun/year-quadrature.ts';
import { yearSamples } from '../sun/year-samples.ts';
import { classesThatMatter, groupPhases, SKY_LEAF_TOLERANCE, SUN_LEAF_TOLERANCE } from './leaf-groups.ts';
import type { LightScene } from './light-types.ts';
import { type RayDirection, rayDirection } from './shadow-tile.ts';

/** Sums kept a cell: first the sun's, the slots of the quadrature's weights, all but the last; */
const SUN_SLOTS = WEIGHT_GROWING_HOURS;
/** then hours by month behind the land alone; */
export const LAND_SLOTS = SUN_SLOTS;
/** then the sky's, one a leaf group. */
export const SKY_SLOTS = LAND_SLOTS + 12;

export interface PlannedDirection {
  readonly ray: RayDirection;
  readonly gridAzimuthRad: number;
  /** Number of leaf states. */
  readonly states: number;
  /** Leaf share by state and class. */
  readonly leafShare: Float64Array;
  /** For each state, the slots it adds to and how much: what a ray let through counts for. */
  readonly slots: readonly Uint8Array[];
  readonly weights: readonly Float64Array[];
  /** For each state, the growing season alone: hours of sun, and photons (mol m-2). */
  readonly growingHours: Float64Array;
  readonly growingMol: Float64Array;
}

export interface LightPlan {
  readonly classCount: number;
  /** Slots as in the quadrature: hours and photons of the beam. */
  readonly sun: readonly PlannedDirection[];
  /** Slot g: share of the diffuse light of an open sky, in leaf group g. */
  readonly sky: readonly PlannedDirection[];
  readonly skyGroups: number;
  /** Totals on open level ground by slot of the sun. */
  readonly sunTotal: Float64Array;
  /** Photons of the sky in each period (12 months, then the season) and leaf group, mol m-2: period * skyGroups + g. */
  readonly diffuseMol: Float64Array;
  /** Photons of sun and sky by period, mol m-2. */
  readonly openMol: Float64Array;
  readonly daysInMonth: Uint8Array;
  readonly growingDaysByMonth: Float32Array;
}

const PERIODS = 13;

/** How finely the year is looked at. */
export interface Fineness {
  readonly sun: QuadratureSteps;
  readonly skyDirections: number;
}
/** The stated error holds for this one. */
export const USUAL: Fineness = { sun: QUADRATURE_STEPS, skyDirections: SKY_DIRECTION_COUNT };
/** What a hand is followed with: some 850 directions of the sun and 240 of the sky. */
export const LIVE: Fineness = {
  sun: { declinationLevels: 20, minutes: 17 },
  skyDirections: 240,
};

/** What means over whole fields are compared with: some 330 directions of the sun and 120 of the sky. */
export const SURVEY: Fineness = {
  sun: { declinationLevels: 12, minutes: 30 },
  skyDirections: 120,
};

/** What of a scene a plan hangs on. */
type PlannedFor = Pick<
  LightScene,
  'calendarYear' | 'timeZone' | 'latDeg' | 'lonDeg' | 'convergenceRad' | 'sky' | 'leaf' | 'growingDay'
>;

/**
 * The plans made last are kept: making one takes about a tenth of a second.
 * @param matters 1 for each leaf class that some thing hangs on, where more stands than in the scene.
 */
export function lightPlan(
  scene: LightScene,
  fineness: Fineness = USUAL,
  matters: Uint8Array = classesThatMatter(scene),
): LightPlan {
  const { calendarYear, timeZone, latDeg, lonDeg, convergenceRad, sky, leaf, growingDay } = scene;
  return keptPlan(
    { calendarYear, timeZone, latDeg, lonDeg, convergenceRad, sky, leaf, growingDay },
    fineness,
    matters,
  );
}

/** One of each fineness. */
const MOST_PLANS = 3;
const keptPlan = lastAnswers(MOST_PLANS, makePlan);
const keptSamples = lastAnswers(1, yearSamples);

function makePlan(scene: PlannedFor, fineness: Fineness, matters: Uint8Array): LightPlan {
  const { leaf, growingDay, convergenceRad } = scene;
  const samples = keptSamples(scene.calendarYear, scene.timeZone, scene.latDeg, scene.lonDeg, scene.sky);
  const { monthOfDay, daysInMonth } = samples.civil;
  const days = monthOfDay.length;
  if (leaf.phaseOfDay.length !== days || growingDay.length !== days)
    throw new Error(
      `The year ${scene.calendarYear} has ${days} days, the leaf calendar ${leaf.phaseOfDay.length} and the growing season ${growingDay.length}; expected the same number.`,
    );
  const quadrature = yearQuadrature(samples, scene.latDeg, leaf.phaseOfDay, growingDay, fineness.sun);

  const sunTotal = new Float64Array(SUN_SLOTS);
  const sun: PlannedDirection[] = [];
  for (let n = 0; n < quadrature.count; n++) {
    const first = quadrature.partStart[n];
    const end = quadrature.partStart[n + 1];
    const importance = new Float64Array(end - first);
    for (let part = first; part < end; part++)
      for (let s = 0; s < WEIGHT_STRIDE; s++)
        importance[part - first] += quadrature.partWeights[part * WEIGHT_STRIDE + s];
    const groups = groupPhases(
      leaf,
      matters,
      quadrature.partPhase.subarray(first, end),
      importance,
      SUN_LEAF_TOLERANCE,
    );
    const sums = Array.from({ length: groups.count }, () => new Float64Array(WEIGHT_STRIDE));
    for (let part = first; part < end; part++)
      for (let s = 0; s < WEIGHT_STRIDE; s++) {
        const weight = quadrature.partWeights[part * WEIGHT_STRIDE + s];
        sums[groups.groupOf[part - first]][s] += weight;
        if (s < SUN_SLOTS) sunTotal[s] += weight;
      }
    const used = sums.map(slotsInUse);
    sun.push({
      ...aim(quadrature.altitudeRad[n], quadrature.azimuthRad[n]),
      states: groups.count,
      leafShare: groups.leafShare,
      slots: used,
      weights: sums.map((sum, g) => valuesAt(sum, used[g])),
      growingHours: Float64Array.from(sums, (sum) => sum[WEIGHT_GROWING_HOURS]),
      growingMol: Float64Array.from(sums, (sum) => growingBeam(sum)),
    });
  }

  const phases = Array.from({ length: leaf.phaseCount }, (_, phase) => phase);
  const molOfPhase = new Float64Array(leaf.phaseCount);
  for (let d = 0; d < days; d++) molOfPhase[leaf.phaseOfDay[d]] += samples.diffuseMolByDay[d];
  const groups = groupPhases(leaf, matters, phases, molOfPhase, SKY_LEAF_TOLERANCE);
  const dome = skyDirections(scene.sky.diffuseSky, fineness.skyDirections);
  const diffuseMol = new Float64Array(PERIODS * groups.count);
  const growingDaysByMonth = new Float32Array(12);
  for (let d = 0; d < days; d++) {
    const g = groups.groupOf[leaf.phaseOfDay[d]];
    diffuseMol[monthOfDay[d] * groups.count + g] += samples.diffuseMolByDay[d];
    if (!growingDay[d]) continue;
    diffuseMol[12 * groups.count + g] += samples.diffuseMolByDay[d];
    growingDaysByMonth[monthOfDay[d]]++;
  }
  const sky = Array.from({ length: dome.count }, (_, k) => ({
    ...aim(dome.altitudeRad[k], dome.azimuthRad[k]),
    states: groups.count,
    leafShare: groups.leafShare,
    slots: Array.from({ length: groups.count }, (_, g) => Uint8Array.of(g)),
    weights: Array.from({ length: groups.count }, () => Float64Array.of(dome.share[k])),
    growingHours: new Float64Array(groups.count),
    growingMol: Float64Array.from(
      { length: groups.count },
      (_, g) => dome.share[k] * diffuseMol[12 * groups.count + g],
    ),
  }));

  const openMol = new Float64Array(PERIODS);
  for (let period = 0; period < PERIODS; period++) {
    openMol[period] =
      period < 12
        ? sunTotal[WEIGHT_BEAM_GROWING + period] + sunTotal[WEIGHT_BEAM_RESTING + period]
        : growingBeam(sunTotal);
    for (let g = 0; g < groups.count; g++) openMol[period] += diffuseMol[period * groups.count + g];
  }
  return {
    classCount: leaf.classCount,
    sun,
    sky,
    skyGroups: groups.count,
    sunTotal,
    diffuseMol,
    openMol,
    daysInMonth,
    growingDaysByMonth,
  };

  function aim(altitudeRad: number, azimuthRad: number): { ray: RayDirection; gridAzimuthRad: number } {
    return {
      ray: rayDirection(altitudeRad, azimuthRad, convergenceRad),
      gridAzimuthRad: azimuthRad - convergenceRad,
    };
  }
}

/** Photons of the growing season in a set of weights. */
function growingBeam(weights: Float64Array): number {
  let sum = 0;
  for (let month = 0; month < 12; month++) sum += weights[WEIGHT_BEAM_GROWING + month];
  return sum;
}

/** Slots of the sun that a set of weights adds to. */
function slotsInUse(weights: Float64Array): Uint8Array {
  const used = new Uint8Array(SUN_SLOTS);
  let count = 0;
  for (let slot = 0; slot < SUN_SLOTS; slot++) if (weights[slot] > 0) used[count++] = slot;
  return used.subarray(0, count);
}

function valuesAt(weights: Float64Array, slots: Uint8Array): Float64Array {
  const values = new Float64Array(slots.length);
  for (let k = 0; k < slots.length; k++) values[k] = weights[slots[k]];
  return values;
}
