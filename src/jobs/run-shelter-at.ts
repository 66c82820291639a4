import type { SceneThing } from '../scene/options.ts';
import type { ShelterAt, ShelterAtRequest } from '../wind/shelter-at-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';

/** Something that shelters, with its owner. */
export interface ShelteringThing extends SceneThing {
  /** Null where the site does not say. */
  readonly owner: string | null;
}

/** The wind at a spot, with the names of what shelters it. */
export interface WindHere {
  readonly at: ShelterAt;
  /** What the `thing` indices stand for. */
  readonly things: readonly ShelteringThing[];
}

export interface WindHereRequest extends ShelterAtRequest {
  readonly things: readonly SceneThing[];
  readonly owners: ReadonlyMap<SceneThing['id'], string>;
}

/** From where a spot is sheltered and by what, worked out by one thread. */
export async function runShelterAt(
  runner: JobRunner,
  { things, owners, ...request }: WindHereRequest,
  options: RunOptions = {},
): Promise<WindHere> {
  const at = await runner.run('shelter-at', request, options);
  return { at, things: things.map((thing) => ({ ...thing, owner: owners.get(thing.id) ?? null })) };
}
