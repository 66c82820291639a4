/**
 * Shelter that follows a hand: what stands still is laid once for each direction and kept, and what is in hand is laid
 * over a copy at every step. The smallest share wins in whatever order, so the answer is that of a computation from
 * scratch. With the chained rule it is computed from scratch.
 */
import { sameContent } from '../numeric/same-content.ts';
import type { Steps } from '../numeric/steps.ts';
import type { Piece } from './barrier-pieces.ts';
import { checkShelterRequest } from './check-request.ts';
import { computeShelter } from './compute-shelter.ts';
import { LANE_BYTES } from './kernel/assembly/layout.ts';
import { finishDirection, layThings, layWhole } from './lay-direction.ts';
import { blowOver } from './lay-pieces.ts';
import {
  activePieces,
  emptyShelter,
  enterTile,
  openRoom,
  type ShelterRoom,
  type ShelterSetting,
  shelterSetting,
  sideBySide,
  sumUp,
  writeTile,
} from './shelter-room.ts';
import { type ShelterTile, shelterTiles, windRay } from './shelter-tile.ts';
import type { HeldShelterRequest, ShelterResult } from './shelter-types.ts';

const PAUSE_MS = 20;

/** What stands still, laid. */
export interface ShelterField {
  /** The request it was made for; another that differs in more than the things in hand needs a field of its own. */
  readonly madeFor: HeldShelterRequest;
  /** Scattered trees stay as they were found then: which of them stand inside a belt is settled when the hand rests. */
  readonly setting: ShelterSetting;
  readonly room: ShelterRoom;
  readonly tile: ShelterTile;
  /** Addresses of the deficits, one for each direction and set of leaf states. */
  readonly standing: readonly number[];
  /** The pieces of which they are. */
  readonly still: string;
}

export interface Followed {
  /** To be given back with the next step; null where nothing can be kept. */
  readonly field: ShelterField | null;
  readonly result: ShelterResult;
}

/**
 * The shelter of a request some of whose things are in hand.
 * @param field of the step before; made anew where it does not fit
 */
export function* followShelter(field: ShelterField | null, request: HeldShelterRequest): Steps<Followed> {
  checkShelterRequest(request);
  const tiles = shelterTiles(request.grid);
  if (tiles.length > 1 || request.options.chainedBelts)
    return { field: null, result: yield* computeShelter(request) };
  const pieces = activePieces(request);
  const [inHand, still] = parted(request, pieces);
  const fits =
    field &&
    field.still === sayWhich(still) &&
    sameContent(besideBarriers(request), besideBarriers(field.madeFor));
  const kept = fits ? field : yield* layStill(request, still, tiles[0]);
  const { room, tile, standing, setting } = kept;
  const { kernel, deficits } = room.ground;
  const ground = { ...room.ground, pieces, tile };
  const result = emptyShelter(request, setting);
  enterTile(room, setting, tile);
  const bytes = tile.columns * tile.rows * LANE_BYTES;
  let next = 0;
  for (const direction of setting.directions) {
    const blow = blowOver(ground, windRay(direction.fromRad));
    for (const phases of sideBySide(direction, setting.seasons.phases)) {
      kernel.bytes.copyWithin(deficits, standing[next], standing[next] + bytes);
      next++;
      for (const piece of inHand) layWhole(ground, blow, piece, phases);
      finishDirection(ground, room.around, blow, phases);
      sumUp(room, direction, phases);
    }
  }
  writeTile(room, request, setting, tile, result);
  return { field: kept, result };
}

const besideBarriers = ({ held, scene, ...more }: HeldShelterRequest) => ({
  ...more,
  scene: { ...scene, barriers: null },
});

/** Pieces in hand and pieces that stand still. What touches a thing in hand is in hand too: they shelter as one. */
function parted(
  { scene, held }: HeldShelterRequest,
  pieces: readonly Piece[],
): readonly [readonly Piece[], readonly Piece[]] {
  const barriers = new Set(held.map((index) => scene.barriers[index]));
  const groups = new Set(pieces.filter(({ barrier }) => barriers.has(barrier)).map(({ group }) => group));
  return [pieces.filter(({ group }) => groups.has(group)), pieces.filter(({ group }) => !groups.has(group))];
}

/** All of the pieces that counts, in one text. Groups are numbered anew at every step: what counts is who shares one. */
function sayWhich(pieces: readonly Piece[]): string {
  const order = [...new Set(pieces.map(({ group }) => group))];
  return JSON.stringify(
    pieces.map(({ barrier, xyM, heightM, group }) => [
      barrier.shape,
      barrier.baseM,
      barrier.widthM,
      barrier.porosityOn,
      barrier.porosityOff,
      barrier.leafClass,
      [...xyM],
      [...heightM],
      order.indexOf(group),
    ]),
  );
}

function* layStill(
  request: HeldShelterRequest,
  still: readonly Piece[],
  tile: ShelterTile,
): Steps<ShelterField> {
  const setting = shelterSetting(request);
  const { pieces, seasons, directions } = setting;
  const room = openRoom(request, setting, [tile]);
  const { kernel, deficits } = room.ground;
  const bytes = tile.columns * tile.rows * LANE_BYTES;
  const standing = directions.flatMap((direction) =>
    sideBySide(direction, seasons.phases).map(() => kernel.take(bytes)),
  );
  enterTile(room, setting, tile);
  const ground = { ...room.ground, pieces, tile };
  let pausedMs = performance.now();
  let next = 0;
  for (const direction of directions) {
    const blow = blowOver(ground, windRay(direction.fromRad));
    for (const phases of sideBySide(direction, seasons.phases)) {
      for (const _ of layThings(ground, room.around, blow, phases, still)) {
        if (performance.now() - pausedMs <= PAUSE_MS) continue;
        yield next / standing.length;
        pausedMs = performance.now();
      }
      kernel.bytes.copyWithin(standing[next], deficits, deficits + bytes);
      next++;
    }
  }
  return { madeFor: request, setting, room, tile, standing, still: sayWhich(still) };
}
