import type { Steps } from '../numeric/steps.ts';
import { checkShelterRequest } from './check-request.ts';
import { layDirection } from './lay-direction.ts';
import {
  emptyShelter,
  enterTile,
  openRoom,
  shelterSetting,
  sideBySide,
  sumUp,
  writeTile,
} from './shelter-room.ts';
import { shelterTiles } from './shelter-tile.ts';
import type { ShelterRequest, ShelterResult } from './shelter-types.ts';

const PAUSE_MS = 20;

/**
 * Share of open wind and gale hours on every cell: for each direction and leaf state the smallest share that any
 * barrier or the scattered trees leave there (the published rule for several barriers), times what the shape of the
 * land makes of it, weighted by the wind's speed and frequency.
 * The rows of a band of the grid come out exactly as they do in the whole. Yields its progress about every 20 ms.
 * Throws BadInputError where a height or porosity is out of range.
 */
export function* computeShelter(request: ShelterRequest): Steps<ShelterResult> {
  checkShelterRequest(request);
  const setting = shelterSetting(request);
  const { pieces, trees, seasons, directions, shaped } = setting;
  const result = emptyShelter(request, setting);
  const tiles = shelterTiles(request.grid);
  const room = openRoom(request, setting, tiles);
  const nothing = pieces.length === 0 && trees.length === 0 && !shaped;
  let pausedMs = performance.now();
  for (let tileIndex = 0; tileIndex < tiles.length; tileIndex++) {
    const tile = tiles[tileIndex];
    enterTile(room, setting, tile);
    const ground = { ...room.ground, pieces, tile };
    for (let d = 0; d < directions.length && !nothing; d++) {
      for (const phases of sideBySide(directions[d], seasons.phases)) {
        for (const _ of layDirection(ground, room.around, directions[d], phases)) {
          if (performance.now() - pausedMs <= PAUSE_MS) continue;
          yield (tileIndex + d / directions.length) / tiles.length;
          pausedMs = performance.now();
        }
        sumUp(room, directions[d], phases);
      }
    }
    writeTile(room, request, setting, tile, result);
  }
  return result;
}
