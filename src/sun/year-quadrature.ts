/**
 * The year's sun as a thousand directions. Shadows depend on where the sun stands and not on when, so every moment
 * of the year is shared out between the nearest directions of a lattice in declination and time of day. What each
 * direction stands for is kept by month and by phase of the leaves, so the monthly totals are exact; only the
 * shadows between lattice directions are interpolated.
 */
import { degToRad } from '../units/angle.ts';
import type { YearSamples } from './year-samples.ts';

/** Values kept for each direction and phase: see the offsets. */
export const WEIGHT_STRIDE = 37;
/** Hours of sun, January to December. */
export const WEIGHT_HOURS = 0;
/** Photons from the sun's disc on the horizontal (mol m-2) on days of the growing season, January to December. */
export const WEIGHT_BEAM_GROWING = 12;
/** The same on the other days. */
export const WEIGHT_BEAM_RESTING = 24;
/** Hours of sun on days of the growing season. */
export const WEIGHT_GROWING_HOURS = 36;

export interface SunQuadrature {
  readonly count: number;
  readonly altitudeRad: Float64Array;
  /** Clockwise from true north. */
  readonly azimuthRad: Float64Array;
  /** count + 1 offsets into the parts: a part is what a direction stands for in one phase. */
  readonly partStart: Uint32Array;
  readonly partPhase: Uint8Array;
  /** WEIGHT_STRIDE values a part. */
  readonly partWeights: Float64Array;
}

/** Fineness of the lattice. */
export interface QuadratureSteps {
  readonly declinationLevels: number;
  readonly minutes: number;
}
export const QUADRATURE_STEPS: QuadratureSteps = { declinationLevels: 22, minutes: 15 };

const MAX_DECLINATION_RAD = degToRad(23.45);

/** @param phaseOfDay phase of the leaves, one a day; @param growingDay 1 for each day of the growing season. */
export function yearQuadrature(
  samples: YearSamples,
  latDeg: number,
  phaseOfDay: Uint8Array,
  growingDay: Uint8Array,
  steps: QuadratureSteps = QUADRATURE_STEPS,
): SunQuadrature {
  const latRad = degToRad(latDeg);
  const sinLat = Math.sin(latRad);
  const cosLat = Math.cos(latRad);
  const levels = steps.declinationLevels;

  // One row of directions a declination level, evenly spaced from sunrise to sunset. Rows have an even and an odd
  // number in turn: morning mirrors afternoon in each, and neighbours are staggered by half a step, so that a straight
  // edge does not cross many directions at once.
  const levelFirst = new Uint32Array(levels + 1);
  const halfDayRad = new Float64Array(levels);
  for (let level = 0; level < levels; level++) {
    const declination = levelDeclination(level);
    const half = Math.acos(Math.min(1, Math.max(-1, -Math.tan(latRad) * Math.tan(declination))));
    halfDayRad[level] = half;
    const pairs = Math.max(1, Math.round((half * 12 * 60) / (Math.PI * steps.minutes)));
    const nodes = half > 0 ? 2 * pairs + (level % 2) : 0;
    levelFirst[level + 1] = levelFirst[level] + nodes;
  }
  const lattice = levelFirst[levels];
  const partsOfNode: Map<number, Float64Array>[] = Array.from({ length: lattice }, () => new Map());

  for (let i = 0; i < samples.count; i++) {
    const altitude = samples.altitudeRad[i];
    const azimuth = samples.azimuthRad[i];
    const sinAlt = Math.sin(altitude);
    const cosAlt = Math.cos(altitude);
    const declination = Math.asin(sinLat * sinAlt + cosLat * cosAlt * Math.cos(azimuth));
    const hourAngle = Math.atan2(
      -Math.sin(azimuth) * cosAlt,
      cosLat * sinAlt - sinLat * cosAlt * Math.cos(azimuth),
    );
    const position = Math.min(
      levels - 1,
      Math.max(0, ((declination / MAX_DECLINATION_RAD + 1) / 2) * (levels - 1)),
    );
    const lower = Math.min(levels - 2, Math.floor(position));
    let share = position - lower;
    if (halfDayRad[lower] === 0) share = 1;
    else if (halfDayRad[lower + 1] === 0) share = 0;
    if (share < 1) addToLevel(i, lower, hourAngle, 1 - share);
    if (share > 0) addToLevel(i, lower + 1, hourAngle, share);
  }

  function levelDeclination(level: number): number {
    return ((2 * level) / (levels - 1) - 1) * MAX_DECLINATION_RAD;
  }

  function addToLevel(sample: number, level: number, hourAngle: number, share: number): void {
    const first = levelFirst[level];
    const nodes = levelFirst[level + 1] - first;
    if (nodes === 0) return;
    const half = halfDayRad[level];
    const along = ((hourAngle / half + 1) / 2) * nodes - 0.5;
    const allDay = half >= Math.PI;
    const clamped = allDay ? along : Math.min(nodes - 1, Math.max(0, along));
    const before = Math.floor(clamped);
    const after = clamped - before;
    if (after < 1) addToNode(sample, first + ((before + nodes) % nodes), share * (1 - after));
    if (after > 0) addToNode(sample, first + ((before + 1 + nodes) % nodes), share * after);
  }

  function addToNode(sample: number, node: number, share: number): void {
    const day = samples.day[sample];
    const phase = phaseOfDay[day];
    let weights = partsOfNode[node].get(phase);
    if (!weights) {
      weights = new Float64Array(WEIGHT_STRIDE);
      partsOfNode[node].set(phase, weights);
    }
    const month = samples.civil.monthOfDay[day];
    const hours = share * samples.hours[sample];
    const beam = share * samples.beamMol[sample];
    weights[WEIGHT_HOURS + month] += hours;
    weights[(growingDay[day] ? WEIGHT_BEAM_GROWING : WEIGHT_BEAM_RESTING) + month] += beam;
    if (growingDay[day]) weights[WEIGHT_GROWING_HOURS] += hours;
  }

  const used: number[] = [];
  let partCount = 0;
  for (let node = 0; node < lattice; node++) {
    if (partsOfNode[node].size === 0) continue;
    used.push(node);
    partCount += partsOfNode[node].size;
  }
  const altitudeRad = new Float64Array(used.length);
  const azimuthRad = new Float64Array(used.length);
  const partStart = new Uint32Array(used.length + 1);
  const partPhase = new Uint8Array(partCount);
  const partWeights = new Float64Array(partCount * WEIGHT_STRIDE);
  let level = 0;
  let part = 0;
  used.forEach((node, k) => {
    while (node >= levelFirst[level + 1]) level++;
    const nodes = levelFirst[level + 1] - levelFirst[level];
    const along = (node - levelFirst[level] + 0.5) / nodes;
    const hourAngle = (2 * along - 1) * halfDayRad[level];
    const declination = levelDeclination(level);
    const sinDec = Math.sin(declination);
    const cosDec = Math.cos(declination);
    altitudeRad[k] = Math.asin(
      Math.min(1, Math.max(1e-6, sinLat * sinDec + cosLat * cosDec * Math.cos(hourAngle))),
    );
    azimuthRad[k] = Math.atan2(
      -cosDec * Math.sin(hourAngle),
      cosLat * sinDec - sinLat * cosDec * Math.cos(hourAngle),
    );
    for (const [phase, weights] of partsOfNode[node]) {
      partPhase[part] = phase;
      partWeights.set(weights, part * WEIGHT_STRIDE);
      part++;
    }
    partStart[k + 1] = part;
  });
  return { count: used.length, altitudeRad, azimuthRad, partStart, partPhase, partWeights };
}
