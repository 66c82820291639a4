/** What one request to the shelter engine comes to, and the room in a kernel in which its tiles are worked out. */
import { barrierPieces, type Piece } from './barrier-pieces.ts';
import { USUAL_FINENESS } from './fineness.ts';
import { LANES } from './kernel/assembly/layout.ts';
import { type Surroundings, takeSurroundings } from './lay-direction.ts';
import { type Ground, openGround } from './lay-pieces.ts';
import { type LooseTree, looseTrees } from './loose-trees.ts';
import type { Relief } from './relief.ts';
import { reliefOnTile } from './relief-on-tile.ts';
import { type ShelterDirection, shelterDirections } from './shelter-directions.ts';
import { type ShelterPhase, type ShelterSeasons, shelterSeasons } from './shelter-phases.ts';
import {
  type Additions,
  addOpen,
  addSeasons,
  clearSums,
  type OpenSums,
  type SeasonSums,
  takeAdditions,
  takeSums,
  writeBands,
} from './shelter-sums.ts';
import type { ShelterTile } from './shelter-tile.ts';
import type { ShelterRequest, ShelterResult } from './shelter-types.ts';
import { grove } from './tree-field.ts';

const GROWING = 0;
const REST = 1;

export interface ShelterSetting {
  readonly pieces: readonly Piece[];
  readonly trees: readonly LooseTree[];
  readonly seasons: ShelterSeasons;
  readonly directions: readonly ShelterDirection[];
  /** Open wind of the growing season and of the rest of the year. */
  readonly open: readonly OpenSums[];
  /** Null: even land. */
  readonly shaped: Relief | null;
}

/** The pieces of all things that can do anything. */
export const activePieces = ({ scene, readingHeightM, options }: ShelterRequest): Piece[] =>
  barrierPieces(scene.barriers, options.youngBelts ? readingHeightM : 0);

export function shelterSetting(request: ShelterRequest): ShelterSetting {
  const { scene, readingHeightM, galeMps, options, fineness = USUAL_FINENESS } = request;
  const pieces = activePieces(request);
  const acting = [...new Set(pieces.map(({ barrier }) => barrier))];
  const trees = options.scatteredTrees ? looseTrees(scene.crowns, acting, readingHeightM, options) : [];
  const directions = shelterDirections(scene.climate, scene.convergenceRad, galeMps, fineness);
  const open = [
    { speedMps: 0, galeShare: 0 },
    { speedMps: 0, galeShare: 0 },
  ];
  for (const { growing, rest } of directions) {
    addOpen(open[GROWING], growing);
    addOpen(open[REST], rest);
  }
  return {
    pieces,
    trees,
    seasons: shelterSeasons(scene.leaf, scene.growingDay, scene.barriers, trees, fineness.leafStates),
    directions,
    open,
    shaped: options.landform ? scene.relief : null,
  };
}

export interface ShelterRoom {
  readonly ground: Omit<Ground, 'tile' | 'pieces'>;
  readonly around: Surroundings;
  readonly sums: readonly SeasonSums[];
  readonly additions: Additions;
  readonly rowY: number;
}

/** A kernel with room for each of the tiles, one after the other. */
export function openRoom(
  request: ShelterRequest,
  { trees, seasons, shaped }: ShelterSetting,
  tiles: readonly ShelterTile[],
): ShelterRoom {
  const mostCells = Math.max(...tiles.map(({ columns, rows }) => columns * rows));
  const ground = openGround(request, mostCells);
  const { kernel } = ground;
  return {
    ground,
    around: takeSurroundings(
      kernel,
      grove(trees, seasons.phases),
      { relief: shaped !== null, chained: request.options.chainedBelts },
      mostCells,
    ),
    sums: [takeSums(kernel, mostCells), takeSums(kernel, mostCells)],
    additions: takeAdditions(kernel),
    rowY: kernel.take(8 * Math.max(...tiles.map(({ rows }) => rows))),
  };
}

/** Readies the room for a tile: nothing is summed there yet. */
export function enterTile(
  { ground, around, sums, rowY }: ShelterRoom,
  { shaped }: ShelterSetting,
  tile: ShelterTile,
): void {
  const { kernel, deficits } = ground;
  kernel.doubles.set(tile.rowYM, rowY / 8);
  kernel.setTile(tile.columns, tile.rows, tile.cellM, tile.firstXM, rowY, deficits);
  for (const season of sums) clearSums(kernel, season, tile.columns * tile.rows);
  if (shaped && around.relief !== null) reliefOnTile(shaped, tile, kernel.floats, around.relief / 4);
}

/** The leaf states that count in a direction, as many together as are worked out side by side. */
export function sideBySide(
  { growing, rest }: ShelterDirection,
  phases: readonly ShelterPhase[],
): readonly (readonly ShelterPhase[])[] {
  const matter = phases.filter(
    ({ growingWeight, restWeight }) => (growing && growingWeight > 0) || (rest && restWeight > 0),
  );
  return Array.from({ length: Math.ceil(matter.length / LANES) }, (_, i) =>
    matter.slice(i * LANES, (i + 1) * LANES),
  );
}

/** Adds the deficits that lie in the tile to the sums of both seasons. */
export function sumUp(
  { ground: { kernel }, sums, additions }: ShelterRoom,
  { growing, rest }: ShelterDirection,
  phases: readonly ShelterPhase[],
): void {
  const growingWeights = phases.map(({ growingWeight }) => growingWeight);
  const restWeights = phases.map(({ restWeight }) => restWeight);
  addSeasons(kernel, additions, [
    { sums: sums[GROWING], of: growing, phaseWeights: growingWeights },
    { sums: sums[REST], of: rest, phaseWeights: restWeights },
  ]);
}

export function emptyShelter({ grid }: ShelterRequest, { directions }: ShelterSetting): ShelterResult {
  const cells = grid.columns * grid.rows;
  return {
    grid,
    windShare: new Float32Array(3 * cells),
    galeHours: new Float32Array(3 * cells),
    directions: directions.length,
  };
}

/** Writes what the sums of a tile come to. Mutates `result`. */
export function writeTile(
  { ground: { kernel }, sums }: ShelterRoom,
  request: ShelterRequest,
  { open, seasons }: ShelterSetting,
  tile: ShelterTile,
  result: ShelterResult,
): void {
  writeBands(request, kernel, tile, sums, open, [seasons.growingHours, seasons.restHours], result);
}
