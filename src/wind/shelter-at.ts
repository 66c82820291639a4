import type { Barrier } from '../crowns/barrier.ts';
import type { GridSpec } from '../numeric/grid.ts';
import { runToEnd, type Steps } from '../numeric/steps.ts';
import { computeShelter } from './compute-shelter.ts';
import type {
  BySeason,
  SectorAt,
  SectorShelter,
  ShelterAt,
  ShelterAtRequest,
  ThingAt,
} from './shelter-at-types.ts';
import { shelterDirections } from './shelter-directions.ts';
import { windRay } from './shelter-tile.ts';
import type { ShelterResult, WindClimate } from './shelter-types.ts';
import { mayReach, type WindCrossing, windCrossing } from './wind-crossing.ts';

/** Cuts and gains below this are nothing a person can feel, and no reason to name a belt. */
const LEAST_CUT = 0.005;
/** Two sectors this close are the same direction of two seasons. */
const SAME_DIRECTION_DEG = 1e-6;
/** Part of the progress that the sectors take; the rest is what each thing is worth. */
const SECTORS_PART = 0.5;

const NOTHING: BySeason = [Number.NaN, Number.NaN, Number.NaN];
const three = (values: Float32Array): BySeason => [values[0], values[1], values[2]];
const turned = (deg: number): number => ((deg % 360) + 360) % 360;

/** A grid of one cell around the spot. */
const cellAround = ({ xM, yM }: ShelterAtRequest): GridSpec => ({
  columns: 1,
  rows: 1,
  cellM: 1,
  westM: xM - 0.5,
  northM: yM + 0.5,
});

/** The map's engine on the one cell, with some of the barriers and the whole or a part of the wind climate. */
const mapAt = (
  request: ShelterAtRequest,
  barriers: readonly Barrier[],
  climate: WindClimate = request.scene.climate,
): ShelterResult =>
  runToEnd(
    computeShelter({ ...request, grid: cellAround(request), scene: { ...request.scene, barriers, climate } }),
  );

/** The climate in which only one direction blows; the list of sectors stays, so that the direction keeps its width. */
const onlyFrom = (climate: WindClimate, fromDeg: number): WindClimate => {
  const only = (season: WindClimate['growing']): WindClimate['growing'] => ({
    ...season,
    sectors: season.sectors.map((sector) =>
      Math.abs(turned(sector.fromDeg) - fromDeg) < SAME_DIRECTION_DEG ? sector : { ...sector, frequency: 0 },
    ),
  });
  return { ...climate, growing: only(climate.growing), rest: only(climate.rest) };
};

/** Directions of both seasons, rising from north. */
function directionsOf(climate: WindClimate): number[] {
  const all = [...climate.growing.sectors, ...climate.rest.sectors]
    .map(({ fromDeg }) => turned(fromDeg))
    .sort((a, b) => a - b);
  return all.filter((deg, i) => i === 0 || deg - all[i - 1] >= SAME_DIRECTION_DEG);
}

/** Frequency and mean open speed of one direction, by season. */
function openWind(request: ShelterAtRequest, alone: WindClimate) {
  const { growingDay } = request.scene;
  const growingDays = growingDay.reduce((sum, day) => sum + day, 0);
  const days = [growingDays, growingDay.length - growingDays];
  const frequency = [0, 0];
  const run = [0, 0];
  [alone.growing, alone.rest].forEach(({ sectors }, season) => {
    for (const sector of sectors) {
      frequency[season] += sector.frequency;
      run[season] += sector.frequency * sector.meanSpeedMps;
    }
  });
  const ofYear = ([growing, rest]: number[]) => (growing * days[0] + rest * days[1]) / (days[0] + days[1]);
  const frequencies: BySeason = [frequency[0], frequency[1], ofYear(frequency)];
  const runs: BySeason = [run[0], run[1], ofYear(run)];
  const speed = (season: 0 | 1 | 2) => (frequencies[season] > 0 ? runs[season] / frequencies[season] : 0);
  return { frequency: frequencies, openSpeedMps: [speed(0), speed(1), speed(2)] as BySeason };
}

/**
 * From which directions a spot is sheltered, by what, and what each thing is worth there. Everything is asked of the
 * map's own engine on one cell, so that the sectors' shares, weighted by frequency and speed, are the map's share, and
 * what a thing is worth is the map without it less the map with it. Yields its progress between cells.
 * Throws BadInputError as the map does.
 */
export function* computeShelterAt(request: ShelterAtRequest): Steps<ShelterAt> {
  const { scene, xM, yM, readingHeightM } = request;
  const { climate } = scene;
  const whole = mapAt(request, scene.barriers);
  const head = {
    climateHeightM: climate.heightM,
    readingHeightM,
    windShare: three(whole.windShare),
    galeHours: three(whole.galeHours),
  };
  if (Number.isNaN(whole.windShare[2]))
    return { ...head, shareWithoutThings: head.windShare, sectors: [], things: [] };

  const near = scene.barriers.filter((barrier) => mayReach(barrier, xM, yM));
  const directions = directionsOf(climate);
  const sectors: SectorAt[] = [];
  for (const fromDeg of directions) {
    const alone = onlyFrom(climate, fromDeg);
    const open = openWind(request, alone);
    if (open.frequency[2] > 0 && open.openSpeedMps[2] > 0) {
      const share = blowing(three(mapAt(request, scene.barriers, alone).windShare), open.openSpeedMps);
      const bare = three(mapAt(request, [], alone).windShare);
      sectors.push({
        fromDeg,
        ...open,
        share,
        shareWithoutThings: blowing(bare, open.openSpeedMps),
        by: shelterersOf(request, near, alone, bare),
      });
    } else sectors.push({ fromDeg, ...open, share: NOTHING, shareWithoutThings: NOTHING, by: [] });
    yield (SECTORS_PART * sectors.length) / directions.length;
  }
  const things: ThingAt[] = [];
  const candidates = [...new Set(near.map(({ thing }) => thing))];
  for (const [done, thing] of candidates.entries()) {
    const without = mapAt(
      request,
      scene.barriers.filter((barrier) => barrier.thing !== thing),
    ).windShare;
    const comesBack = three(without.map((share, band) => share - whole.windShare[band]));
    if (comesBack.some((gain) => Math.abs(gain) >= LEAST_CUT)) things.push({ thing, comesBack });
    yield SECTORS_PART + ((1 - SECTORS_PART) * (done + 1)) / candidates.length;
  }
  return {
    ...head,
    shareWithoutThings: three(mapAt(request, []).windShare),
    sectors,
    things: things.sort((a, b) => b.comesBack[2] - a.comesBack[2]),
  };
}

const blowing = (share: BySeason, speed: BySeason): BySeason =>
  [0, 1, 2].map((season) => (speed[season] > 0 ? share[season] : Number.NaN)) as unknown as BySeason;

/** The things that the wind of one sector crosses within reach, each with what it does there alone, strongest first. */
function shelterersOf(
  request: ShelterAtRequest,
  near: readonly Barrier[],
  alone: WindClimate,
  bare: BySeason,
): SectorShelter[] {
  const { scene, xM, yM, galeMps, fineness } = request;
  const rays = shelterDirections(alone, scene.convergenceRad, galeMps, fineness).map(({ fromRad }) =>
    windRay(fromRad),
  );
  const crossed = new Map<number, WindCrossing>();
  for (const barrier of near) {
    for (const ray of rays) {
      const crossing = windCrossing(barrier, ray, xM, yM);
      const known = crossed.get(barrier.thing);
      // Of several rays the one that meets it nearest, upwind before downwind.
      if (crossing && (!known || isNearer(crossing, known))) crossed.set(barrier.thing, crossing);
    }
  }
  const found: SectorShelter[] = [];
  for (const [thing, crossing] of crossed) {
    const only = scene.barriers.filter((barrier) => barrier.thing === thing);
    const share = mapAt(request, only, alone).windShare;
    const cut = bare.map((open, band) => open - share[band]) as unknown as BySeason;
    if (cut.some((each) => each >= LEAST_CUT)) found.push({ thing, ...crossing, cut });
  }
  return found.sort((a, b) => b.cut[2] - a.cut[2]);
}

function isNearer(a: WindCrossing, b: WindCrossing): boolean {
  if (a.distanceM >= 0 !== b.distanceM >= 0) return a.distanceM >= 0;
  return Math.abs(a.distanceM) < Math.abs(b.distanceM);
}
