/** Everything that one direction of the wind meets on a tile: barriers, trees, ends, and the shape of the land. */
import type { Piece } from './barrier-pieces.ts';
import { LANES } from './kernel/assembly/layout.ts';
import { blowOver, type Ground, layBeside, layEnds, layPiece } from './lay-pieces.ts';
import type { LooseTree } from './loose-trees.ts';
import { applyRelief } from './relief-on-tile.ts';
import type { ShelterDirection } from './shelter-directions.ts';
import type { ShelterPhase } from './shelter-phases.ts';
import { windRay } from './shelter-tile.ts';
import { layTreeField, treeField } from './tree-field.ts';

/** What acts besides barriers. */
export interface Surroundings {
  readonly trees: readonly LooseTree[];
  /** The relief on the tile (see reliefOnTile); null: even land. */
  readonly relief: Float32Array | null;
  /** Address of a second set of deficits, for what is multiplied into the first; null: the smallest share wins. */
  readonly scratch: number | null;
}

/** Pieces by what they belong to: touching things are one barrier, of which the smallest share counts. */
function groupsOf(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const groups: Piece[][] = [];
  for (const piece of pieces) {
    groups[piece.group] ??= [];
    groups[piece.group].push(piece);
  }
  return groups;
}

/** The deficits of one direction, as many leaf states as the kernel has lanes. Pauses after each piece. */
export function* layDirection(
  ground: Ground,
  { trees, relief, scratch }: Surroundings,
  { fromRad }: ShelterDirection,
  phases: readonly ShelterPhase[],
): Generator<void> {
  const ray = windRay(fromRad);
  const { kernel, tile, deficits, options } = ground;
  const blow = blowOver(ground, ray);
  const clearAt = (address: number) => {
    kernel.setDeficits(address);
    kernel.clearDeficits();
  };
  clearAt(deficits);
  const onto = scratch === null ? ground : { ...ground, deficits: scratch };
  const multiplyIn = () => {
    if (scratch === null) return;
    chain(kernel.floats, deficits / 4, scratch / 4, LANES * tile.columns * tile.rows);
  };
  for (const pieces of scratch === null ? [ground.pieces] : groupsOf(ground.pieces)) {
    if (scratch !== null) clearAt(scratch);
    for (const piece of pieces) {
      layPiece(onto, blow, piece, phases);
      if (options.parallelWind) layBeside(onto, blow, piece, phases);
      yield;
    }
    multiplyIn();
  }
  const field = treeField(trees, ray, phases);
  if (field) {
    if (scratch !== null) clearAt(scratch);
    layTreeField(tile, ray, field, kernel.floats, onto.deficits / 4);
    multiplyIn();
    yield;
  }
  kernel.setDeficits(deficits);
  if (options.endsAndGaps) layEnds(ground, blow, phases);
  if (relief) applyRelief(relief, ray, kernel.floats, deficits / 4);
}

/** Multiplies the shares that are left: 1 - d = (1 - d1) (1 - d2). Mutates `floats` from `into` on. */
function chain(floats: Float32Array, into: number, from: number, count: number): void {
  for (let i = 0; i < count; i++) {
    const second = floats[from + i];
    if (second !== 0) floats[into + i] += second * (1 - floats[into + i]);
  }
}
