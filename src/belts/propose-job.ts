/** The search as one job: lays what each belt does, and finds the best choice for each aim. */
import type { Barrier } from '../crowns/barrier.ts';
import type { LightScene } from '../light/light-types.ts';
import { cellCentreX, cellCentreY, type GridSpec } from '../numeric/grid.ts';
import { type Steps, within } from '../numeric/steps.ts';
import { isInside, type XY } from '../site/plane-geometry.ts';
import type { ShelterRequest } from '../wind/shelter-types.ts';
import { cutOf, layCover, together } from './propose-cover.ts';
import { type Choice, searchBelts } from './propose-search.ts';
import { beltShade, type SeasonRay, seasonRays } from './propose-shade.ts';
import type { WindSeason } from './propose-types.ts';

/** What a choice of belts shall be least of. */
export type BeltAim = 'land' | 'shade';

export interface SearchRequest {
  /** What stands there already, on a coarse grid of the field. */
  readonly shelter: ShelterRequest;
  /** 1 for each cell of the field. */
  readonly mask: Uint8Array;
  /** Outlines of the field, local metres. */
  readonly rings: readonly (readonly XY[])[];
  /** What could be planted; lines. */
  readonly belts: readonly Barrier[];
  /** Pairs that exclude each other: a * belts + b. */
  readonly excluded: Uint8Array;
  /** For its sun and sky: what of it stands is not looked at. */
  readonly light: LightScene;
  readonly season: WindSeason;
  readonly cutShare: number;
  readonly overShare: number;
  readonly aims: readonly BeltAim[];
}

export interface SearchResult {
  /** One for each aim. */
  readonly choices: readonly Choice[];
  /** Share of the field that is sheltered enough with nothing more planted. */
  readonly overShareNow: number;
  /** For the choice that shelters most: the cut that the asked share of the field has at least. */
  readonly cutThere: number;
}

/** So many belts at most: more is a plan of its own. Our choice. */
const MOST_BELTS = 7;
const LAYING_SHARE = 0.7;
/** Weight of the other cost, so that of two alike the one that is better otherwise is taken. */
const OTHER_COST = 0.02;
/** Every belt has two ends to be fenced and walked round, and the wind is faster beside them: a guess of ours, m2. */
const ENDS_M2 = 15;

const lengthOf = ({ xyM }: Barrier): number => {
  let sum = 0;
  for (let v = 0; v + 3 < xyM.length; v += 2) sum += Math.hypot(xyM[v + 2] - xyM[v], xyM[v + 3] - xyM[v + 1]);
  return sum;
};

/** Middles of the cells that count, x, y. */
function placesOf(grid: GridSpec, mask: Uint8Array): Float64Array {
  const places: number[] = [];
  for (let cell = 0; cell < mask.length; cell++)
    if (mask[cell])
      places.push(cellCentreX(grid, cell % grid.columns), cellCentreY(grid, Math.floor(cell / grid.columns)));
  return Float64Array.from(places);
}

/** What the belts cost for each aim, m2 of ground or of open light. */
function beltCosts(
  { belts, rings, shelter, mask }: SearchRequest,
  rays: readonly SeasonRay[],
): Record<BeltAim, Float64Array> {
  const places = placesOf(shelter.grid, mask);
  const cellM2 = shelter.grid.cellM ** 2;
  const isOnField = (x: number, y: number) => isInside([x, y], rings);
  const shades = belts.map((belt) => beltShade(belt, rays, places, cellM2, isOnField));
  const land = belts.map((belt, i) => lengthOf(belt) * belt.widthM + shades[i].darkM2);
  return {
    land: Float64Array.from(land, (m2, i) => m2 + OTHER_COST * shades[i].lostM2 + ENDS_M2),
    shade: Float64Array.from(shades, ({ lostM2 }, i) => lostM2 + OTHER_COST * land[i] + ENDS_M2),
  };
}

export function* proposeSearch(request: SearchRequest): Steps<SearchResult> {
  const { shelter, mask, belts, excluded, season, cutShare, overShare, aims } = request;
  const cover = yield* within(layCover(shelter, belts, mask, season), 0, LAYING_SHARE);
  const costs = beltCosts(request, seasonRays(request.light));
  yield LAYING_SHARE;
  const excludes = (a: number, b: number) => excluded[a * belts.length + b] === 1;
  const task = { cover, cutShare, overShare, excludes, mostBelts: MOST_BELTS };
  const choices: Choice[] = [];
  for (const aim of aims) {
    const hints = choices.map(({ chosen }) => chosen);
    choices.push(searchBelts({ ...task, costs: costs[aim] }, hints));
    yield LAYING_SHARE + ((1 - LAYING_SHARE) * choices.length) / aims.length;
  }
  const most = choices.reduce((a, b) => (b.overShare > a.overShare ? b : a));
  const cut = cutOf(cover, together(cover, most.chosen)).sort();
  const rank = Math.min(cut.length - 1, Math.floor((1 - overShare) * cut.length));
  const now = cutOf(cover, cover.standing);
  return {
    choices,
    overShareNow: now.reduce((sum, one) => sum + (one >= cutShare ? 1 : 0), 0) / Math.max(1, now.length),
    cutThere: cut[rank] ?? 0,
  };
}
