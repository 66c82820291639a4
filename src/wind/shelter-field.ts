/**
 * Shelter that follows a hand: what stands still is laid once for each direction and kept, and what is in hand is laid
 * over a copy at every step. The smallest share wins in whatever order, so the answer is that of a computation from
 * scratch. With the chained rule it is computed from scratch.
 */
import { sameContent } from '../numeric/same-content.ts';
import type { Steps } from '../numeric/steps.ts';
import { shelterReachM } from './barrier-effects.ts';
import type { Piece } from './barrier-pieces.ts';
import { checkShelterRequest } from './check-request.ts';
import { computeShelter } from './compute-shelter.ts';
import { LANE_BYTES } from './kernel/assembly/layout.ts';
import { finishDirection, layThings, layWhole } from './lay-direction.ts';
import { type Blow, blowOver } from './lay-pieces.ts';
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
import type { HeldShelterRequest, ShelterOptions, ShelterResult } from './shelter-types.ts';
import { DOWNWIND_REACH_H } from './weps.ts';

const PAUSE_MS = 20;

/** What stands still, laid. */
export interface ShelterField {
  /** The request it was made for; another that differs in more than the things in hand needs a field of its own. */
  readonly madeFor: HeldShelterRequest;
  /** Scattered trees stay as they were found then: which of them stand inside a belt is settled when the hand rests. */
  readonly setting: ShelterSetting;
  readonly room: ShelterRoom;
  readonly tile: ShelterTile;
  /** One for each direction and set of leaf states. */
  readonly standing: Standing[];
  /** The pieces that stand still. */
  readonly still: string;
}

/** What stands still, laid in one direction. */
interface Standing {
  /** Of the deficits. */
  readonly address: number;
  /**
   * How far each piece shelters in full, metres: it hangs on what the piece is joined to, which may be in hand. Nothing
   * else of what is in hand reaches into this. NaN: it changes as the hand moves, and the piece was left out.
   */
  reachesM: Float64Array | null;
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
  const barriers = new Set(request.held.map((index) => request.scene.barriers[index]));
  const isHeld = ({ barrier, bridge }: Piece) => bridge || barriers.has(barrier);
  const inHand = pieces.filter(isHeld);
  const still = pieces.filter((piece) => !isHeld(piece));
  const heldGroups = new Set(inHand.map(({ group }) => group));
  const named = sayWhich(still);
  const fits = field?.still === named && sameContent(besideBarriers(request), besideBarriers(field.madeFor));
  const kept = fits ? field : openField(request, named, tiles[0]);
  const { room, tile, standing, setting } = kept;
  const { kernel, deficits } = room.ground;
  const ground = { ...room.ground, pieces, tile };
  const result = emptyShelter(request, setting);
  enterTile(room, setting, tile);
  const bytes = tile.columns * tile.rows * LANE_BYTES;
  let pausedMs = performance.now();
  let next = 0;
  for (const direction of setting.directions) {
    const blow = blowOver(ground, windRay(direction.fromRad));
    const reachesM = reaches(still, blow, request.options);
    const loosely = still.map((piece, k) => heldGroups.has(piece.group) && reachesM[k] < utmostM(piece));
    for (const phases of sideBySide(direction, setting.seasons.phases)) {
      const laid = standing[next++];
      const serves = laid.reachesM?.every((m, k) => m === reachesM[k] || Number.isNaN(m));
      if (serves) kernel.bytes.copyWithin(deficits, laid.address, laid.address + bytes);
      else {
        const firm = still.filter((_, k) => !loosely[k]);
        for (const _ of layThings(ground, room.around, blow, phases, firm)) {
          if (performance.now() - pausedMs <= PAUSE_MS) continue;
          yield next / standing.length;
          pausedMs = performance.now();
        }
        kernel.bytes.copyWithin(laid.address, deficits, deficits + bytes);
        laid.reachesM = reachesM.map((m, k) => (loosely[k] ? Number.NaN : m));
      }
      for (const [k, piece] of still.entries())
        if (Number.isNaN(laid.reachesM?.[k])) layWhole(ground, blow, piece, phases);
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

/** No piece reaches further than this. */
const utmostM = ({ heightM }: Piece): number => DOWNWIND_REACH_H * Math.max(...heightM);

/** How far each piece shelters in full. */
const reaches = (pieces: readonly Piece[], { extents }: Blow, options: ShelterOptions): Float64Array =>
  Float64Array.from(pieces, (piece) => {
    const { greatest, least } = extents[piece.group];
    return Math.min(shelterReachM(greatest - least, options), utmostM(piece));
  });

/** All of the pieces that counts besides what they are joined to, in one text. */
const sayWhich = (pieces: readonly Piece[]): string =>
  JSON.stringify(
    pieces.map(({ barrier, xyM, heightM }) => [
      barrier.shape,
      barrier.baseM,
      barrier.widthM,
      barrier.porosityOn,
      barrier.porosityOff,
      barrier.leafClass,
      [...xyM],
      [...heightM],
    ]),
  );

/** A field in which nothing is laid yet. */
function openField(request: HeldShelterRequest, still: string, tile: ShelterTile): ShelterField {
  const setting = shelterSetting(request);
  const room = openRoom(request, setting, [tile]);
  const bytes = tile.columns * tile.rows * LANE_BYTES;
  const standing = setting.directions.flatMap((direction) =>
    sideBySide(direction, setting.seasons.phases).map(() => ({
      address: room.ground.kernel.take(bytes),
      reachesM: null,
    })),
  );
  return { madeFor: request, setting, room, tile, standing, still };
}
