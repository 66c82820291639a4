/** Everything that one direction of the wind meets on a tile: barriers, trees, ends, and the shape of the land. */
import type { Barrier } from '../crowns/barrier.ts';
import type { Piece } from './barrier-pieces.ts';
import { LANE_BYTES } from './kernel/assembly/layout.ts';
import type { ShelterKernel } from './kernel/kernel.ts';
import { type Blow, blowOver, type Ground, layBeside, layEnds, layPiece } from './lay-pieces.ts';
import { LEAST_RELIEF_SHARE, MOST_RELIEF_SHARE } from './relief.ts';
import type { ShelterDirection } from './shelter-directions.ts';
import type { ShelterPhase } from './shelter-phases.ts';
import { windRay } from './shelter-tile.ts';
import { type Grove, type TreeRoom, takeTreeRoom, treeField } from './tree-field.ts';

/** What acts besides barriers, and where in the kernel. */
export interface Surroundings {
  readonly grove: Grove;
  readonly trees: TreeRoom;
  /** Address of the relief on the tile (see reliefOnTile); null: even land. */
  readonly relief: number | null;
  /** Address of a second set of deficits, for what is multiplied into the first; null: the smallest share wins. */
  readonly scratch: number | null;
}

/** Room in the kernel for what acts besides barriers on tiles of so many cells. */
export const takeSurroundings = (
  kernel: ShelterKernel,
  grove: Grove,
  { relief, chained }: { readonly relief: boolean; readonly chained: boolean },
  mostCells: number,
): Surroundings => ({
  grove,
  trees: takeTreeRoom(kernel, grove),
  relief: relief ? kernel.take(3 * 4 * mostCells) : null,
  scratch: chained ? kernel.take(mostCells * LANE_BYTES) : null,
});

/** Pieces by the barrier they are of: of one barrier the smallest share counts, those of several are multiplied. */
function byBarrier(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const found = new Map<Barrier, Piece[]>();
  for (const piece of pieces) found.set(piece.barrier, [...(found.get(piece.barrier) ?? []), piece]);
  return [...found.values()];
}

/** The deficits of one direction, as many leaf states as the kernel has lanes. Pauses after each piece. */
export function* layDirection(
  ground: Ground,
  around: Surroundings,
  { fromRad }: ShelterDirection,
  phases: readonly ShelterPhase[],
): Generator<void> {
  const blow = blowOver(ground, windRay(fromRad));
  yield* layThings(ground, around, blow, phases, ground.pieces);
  finishDirection(ground, around, blow, phases);
}

/** Lays some of the pieces, and the trees, on a tile in which nothing lies yet. Pauses after each piece. */
export function* layThings(
  ground: Ground,
  { grove, trees, scratch }: Surroundings,
  blow: Blow,
  phases: readonly ShelterPhase[],
  some: readonly Piece[],
): Generator<void> {
  const { kernel, deficits } = ground;
  const clearAt = (address: number) => {
    kernel.setDeficits(address);
    kernel.clearDeficits();
  };
  clearAt(deficits);
  const onto = scratch === null ? ground : { ...ground, deficits: scratch };
  const multiplyIn = () => {
    if (scratch === null) return;
    kernel.setDeficits(deficits);
    kernel.chainDeficits(scratch);
  };
  for (const pieces of scratch === null ? [some] : byBarrier(some)) {
    if (scratch !== null) clearAt(scratch);
    for (const piece of pieces) {
      layWhole(onto, blow, piece, phases);
      yield;
    }
    multiplyIn();
  }
  const spec = treeField(kernel, trees, grove, blow.ray, phases);
  if (spec) {
    if (scratch !== null) clearAt(scratch);
    kernel.layField(trees.field, spec.across, spec.along, spec.cellM, spec.firstAcrossM, spec.firstAlongM);
    multiplyIn();
    yield;
  }
  kernel.setDeficits(deficits);
}

/** A piece with all that it does. */
export function layWhole(ground: Ground, blow: Blow, piece: Piece, phases: readonly ShelterPhase[]): void {
  layPiece(ground, blow, piece, phases);
  layBeside(ground, blow, piece, phases);
}

/** What comes after all things: the faster wind beside their ends, and the shape of the land. */
export function finishDirection(
  ground: Ground,
  { relief }: Surroundings,
  blow: Blow,
  phases: readonly ShelterPhase[],
): void {
  if (ground.options.endsAndGaps) layEnds(ground, blow, phases);
  if (relief !== null) ground.kernel.applyRelief(relief, LEAST_RELIEF_SHARE, MOST_RELIEF_SHARE);
}
