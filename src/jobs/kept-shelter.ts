/** What stands still while a hand moves a belt, kept by this thread between steps. One at a time: it is large. */
import { followShelter, type ShelterField } from '../wind/shelter-field.ts';
import type { HeldShelterRequest, ShelterResult } from '../wind/shelter-types.ts';
import { drive } from './drive.ts';
import type { RunOptions } from './messages.ts';

let kept: ShelterField | null = null;

export async function followKept(request: HeldShelterRequest, options: RunOptions): Promise<ShelterResult> {
  const before = kept;
  kept = null;
  const { field, result } = await drive(followShelter(before, request), options);
  kept = field;
  return result;
}
