/**
 * By how much any choice of belts cuts the wind on some cells, without asking the shelter engine again: what each
 * belt does alone is laid once by the engine's own functions, and belts are put together by its rule, the smallest
 * share of open wind. Left out: belts that touch shelter as one (their lengths add). The engine has the last word.
 */
import type { Barrier } from '../crowns/barrier.ts';
import { cellCount } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import { barrierPieces, type Piece } from '../wind/barrier-pieces.ts';
import { USUAL_FINENESS } from '../wind/fineness.ts';
import { LANES } from '../wind/kernel/assembly/layout.ts';
import { finishDirection, layThings, type Surroundings } from '../wind/lay-direction.ts';
import { blowOver } from '../wind/lay-pieces.ts';
import { looseTrees } from '../wind/loose-trees.ts';
import type { SeasonOfDirection, ShelterDirection } from '../wind/shelter-directions.ts';
import { shelterDirections } from '../wind/shelter-directions.ts';
import { type ShelterPhase, shelterSeasons } from '../wind/shelter-phases.ts';
import { enterTile, openRoom, type ShelterSetting, sideBySide } from '../wind/shelter-room.ts';
import { shelterTiles, windRay } from '../wind/shelter-tile.ts';
import type { ShelterRequest } from '../wind/shelter-types.ts';
import type { WindSeason } from './propose-types.ts';

/** A layer is one direction of the wind in one leaf state; values run layer * cells + cell. */
export interface Cover {
  readonly cells: number;
  /** What a deficit counts for: share of the season's open wind, times what the land makes of it. */
  readonly weight: Float32Array;
  /** What the shape of the land alone takes off. */
  readonly landCut: Float32Array;
  /** Deficits of what stands there already, and of each belt alone; negative where the wind is faster. */
  readonly standing: Float32Array;
  readonly belts: readonly Float32Array[];
  /** What several belts leave is multiplied instead. */
  readonly chained: boolean;
}

const PAUSE_MS = 20;

/** The speed-weighted share of the season's wind that comes in one direction and leaf state. */
function weigher(
  season: WindSeason,
  directions: readonly ShelterDirection[],
  hours: readonly [number, number],
) {
  const speed = (of: SeasonOfDirection | null) => of?.speedWeightMps ?? 0;
  const open = [
    directions.reduce((sum, { growing }) => sum + speed(growing), 0),
    directions.reduce((sum, { rest }) => sum + speed(rest), 0),
  ];
  const run = [open[0] * hours[0], open[1] * hours[1]];
  const counts =
    season === 'growing' ? [1, 0] : season === 'rest' ? [0, 1] : run.map((one) => one / (run[0] + run[1]));
  return ({ growing, rest }: ShelterDirection, { growingWeight, restWeight }: ShelterPhase): number =>
    (open[0] > 0 ? (counts[0] * speed(growing) * growingWeight) / open[0] : 0) +
    (open[1] > 0 ? (counts[1] * speed(rest) * restWeight) / open[1] : 0);
}

/**
 * @param request what stands there already, on a grid of one tile; @param belts what could be planted;
 * @param mask 1 for each cell that counts
 */
export function* layCover(
  request: ShelterRequest,
  belts: readonly Barrier[],
  mask: Uint8Array,
  season: WindSeason,
): Steps<Cover> {
  const { scene, readingHeightM, galeMps, options, fineness = USUAL_FINENESS, grid } = request;
  const tiles = shelterTiles(grid);
  if (tiles.length !== 1 || mask.length !== cellCount(grid))
    throw new RangeError(`A grid of one tile and a mask of its ${cellCount(grid)} cells are expected.`);
  const least = options.youngBelts ? readingHeightM : 0;
  const pieces = barrierPieces(scene.barriers, least);
  const acting = [...new Set(pieces.map(({ barrier }) => barrier))];
  const trees = options.scatteredTrees ? looseTrees(scene.crowns, acting, readingHeightM, options) : [];
  const directions = shelterDirections(scene.climate, scene.convergenceRad, galeMps, fineness);
  const seasons = shelterSeasons(
    scene.leaf,
    scene.growingDay,
    [...scene.barriers, ...belts],
    trees,
    fineness.leafStates,
  );
  const setting: ShelterSetting = {
    pieces,
    trees,
    seasons,
    directions,
    open: [],
    shaped: options.landform ? scene.relief : null,
  };
  const room = openRoom(request, setting, tiles);
  enterTile(room, setting, tiles[0]);
  const counted = [...mask.keys()].filter((cell) => mask[cell] === 1);
  const weigh = weigher(season, directions, [seasons.growingHours, seasons.restHours]);
  const layers = directions.flatMap((direction) =>
    sideBySide(direction, seasons.phases).flatMap((phases) => phases.map((phase) => weigh(direction, phase))),
  );
  const used = layers.filter((weight) => weight > 0).length;
  const cover = {
    cells: counted.length,
    weight: new Float32Array(used * counted.length),
    landCut: new Float32Array(counted.length),
    standing: new Float32Array(used * counted.length),
    belts: belts.map(() => new Float32Array(used * counted.length)),
    chained: options.chainedBelts,
  };
  const alone = belts.map((belt) => barrierPieces([belt], least));
  const even: Surroundings = { ...room.around, relief: null };
  const treeless: Surroundings = { ...even, grove: { ...room.around.grove, trees: [] } };
  const { floats } = room.ground.kernel;
  const ownLayers = (phases: readonly ShelterPhase[], direction: ShelterDirection) =>
    phases.flatMap((phase, lane) => {
      const weight = weigh(direction, phase);
      return weight > 0 ? [{ lane, weight }] : [];
    });
  let at = 0;
  let pausedMs = performance.now();
  for (let d = 0; d < directions.length; d++) {
    const direction = directions[d];
    for (const phases of sideBySide(direction, seasons.phases)) {
      const lanes = ownLayers(phases, direction);
      if (lanes.length === 0) continue;
      const keep = (into: Float32Array) =>
        lanes.forEach(({ lane }, k) => {
          const from = room.ground.deficits / 4 + lane;
          const first = (at + k) * counted.length;
          for (let i = 0; i < counted.length; i++) into[first + i] = floats[from + counted[i] * LANES];
        });
      const lay = (of: readonly Piece[], around: Surroundings) => {
        const ground = { ...room.ground, pieces: of, tile: tiles[0] };
        const blow = blowOver(ground, windRay(direction.fromRad));
        for (const _ of layThings(ground, around, blow, phases, of));
        finishDirection(ground, around, blow, phases);
      };
      // The land's own share of the wind: what is laid where nothing stands.
      const landDeficits = new Float32Array(counted.length);
      if (room.around.relief !== null) {
        lay([], { ...treeless, relief: room.around.relief });
        for (let i = 0; i < counted.length; i++)
          landDeficits[i] = floats[room.ground.deficits / 4 + counted[i] * LANES];
      }
      lanes.forEach(({ weight }, k) => {
        for (let i = 0; i < counted.length; i++) {
          cover.weight[(at + k) * counted.length + i] = weight * (1 - landDeficits[i]);
          cover.landCut[i] += weight * landDeficits[i];
        }
      });
      lay(pieces, even);
      keep(cover.standing);
      for (let b = 0; b < belts.length; b++) {
        lay(alone[b], treeless);
        keep(cover.belts[b]);
        if (performance.now() - pausedMs <= PAUSE_MS) continue;
        yield (d + b / belts.length) / directions.length;
        pausedMs = performance.now();
      }
      at += lanes.length;
    }
  }
  return cover;
}

/** Lays a belt over others. Mutates `onto`. */
function layOver(onto: Float32Array, belt: Float32Array, chained: boolean): void {
  if (chained) {
    for (let i = 0; i < onto.length; i++) onto[i] += belt[i] - onto[i] * belt[i];
    return;
  }
  for (let i = 0; i < onto.length; i++) {
    const a = onto[i];
    const b = belt[i];
    // Any shelter at all wins over the faster wind beside an end; of two ends the faster.
    onto[i] = a > 0 || b > 0 ? Math.max(a, b) : Math.min(a, b);
  }
}

/** Deficits with some belts planted. */
export function together({ standing, belts, chained }: Cover, chosen: readonly number[]): Float32Array {
  const all = standing.slice();
  for (const one of chosen) layOver(all, belts[one], chained);
  return all;
}

/** Share by which the wind is cut on each cell, from all deficits. */
export function cutOf({ cells, weight, landCut }: Cover, deficits: Float32Array): Float32Array {
  const cut = landCut.slice();
  for (let first = 0; first < deficits.length; first += cells)
    for (let i = 0; i < cells; i++) cut[i] += weight[first + i] * deficits[first + i];
  return cut;
}

/** The same with one more belt laid over all deficits, which stay as they are. */
export function cutWith(cover: Cover, deficits: Float32Array, belt: Float32Array): Float32Array {
  const { cells, weight, landCut, chained } = cover;
  const cut = landCut.slice();
  for (let first = 0; first < deficits.length; first += cells)
    for (let i = 0, at = first; i < cells; i++, at++) {
      const a = deficits[at];
      const b = belt[at];
      const both = chained ? a + b - a * b : a > 0 || b > 0 ? Math.max(a, b) : Math.min(a, b);
      cut[i] += weight[at] * both;
    }
  return cut;
}
