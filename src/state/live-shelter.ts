/**
 * Shelter that follows a hand: while a belt, a wall or a building changes, the workers lay it anew among the others,
 * from fewer directions, and the map shows that until the hand rests and the exact answer is there. The latest place
 * wins: while one is worked out, those between are passed over.
 */

import type { JobRunner } from '../jobs/messages.ts';
import { followShelter, MOST_FOLLOWED_CELLS } from '../jobs/run-shelter.ts';
import { cellCount } from '../numeric/grid.ts';
import { sameContent } from '../numeric/same-content.ts';
import type { ShelterRequest, ShelterResult } from '../wind/shelter-types.ts';
import { type Key, sameKey, shelterKeyBesideFeatures } from './answer-keys.ts';
import type { AppState } from './model.ts';

/** Where more things than this change at once, the map waits for the hand to rest. */
const MOST_HELD = 12;

export interface LiveShelter {
  /** The exact answer of a state is there: what changes from now on is followed from it. */
  begin(state: AppState, request: ShelterRequest): void;
  /** Whether the answer at hand is of the state's setting, and its features can be followed. */
  follows(state: AppState): boolean;
  /** The same; and `show` is given what is found for the state's features, if they are others. */
  follow(state: AppState, show: (result: ShelterResult) => void): boolean;
}

interface Begun {
  readonly key: Key;
  readonly request: ShelterRequest;
}

export function createLiveShelter(
  runner: JobRunner,
  requestOf: (state: AppState, grid: ShelterRequest['grid']) => ShelterRequest,
): LiveShelter {
  let begun: Begun | null = null;
  let shown: AppState['document']['features'] | null = null;
  let wanted: { state: AppState; show: (result: ShelterResult) => void } | null = null;
  let following = false;

  /** The answer for other features; null where too much is other than it was. */
  async function changed({ request: before }: Begun, state: AppState): Promise<ShelterResult | null> {
    const request = requestOf(state, before.grid);
    const { barriers } = request.scene;
    if (!sameContent({ ...request.scene, barriers: null }, { ...before.scene, barriers: null })) return null;
    if (barriers.length !== before.scene.barriers.length) return null;
    const held = barriers.flatMap((barrier, i) =>
      sameContent(barrier, before.scene.barriers[i]) ? [] : [i],
    );
    return held.length <= MOST_HELD ? followShelter(runner, { ...request, held }) : null;
  }

  async function followOn(): Promise<void> {
    following = true;
    try {
      while (wanted && begun) {
        const { state, show } = wanted;
        wanted = null;
        const from = begun;
        const result = await changed(from, state);
        if (!result || begun !== from) break;
        show(result);
      }
    } catch {
      // The lane's own pass will meet the same trouble and say so.
      begun = null;
    } finally {
      wanted = null;
      following = false;
    }
  }

  const follows = (state: AppState): boolean =>
    begun !== null && state.picture === 'wind-cut' && sameKey(begun.key, shelterKeyBesideFeatures(state));

  return {
    begin(state, request) {
      const fits = cellCount(request.grid) <= MOST_FOLLOWED_CELLS;
      begun = fits ? { key: shelterKeyBesideFeatures(state), request } : null;
      shown = state.document.features;
    },
    follows,
    follow(state, show) {
      if (!follows(state)) return false;
      if (state.document.features !== shown) {
        shown = state.document.features;
        wanted = { state, show };
        if (!following) void followOn();
      }
      return true;
    },
  };
}
