/** The field of light that this thread keeps between jobs, so that it can be changed. One at a time: it is large. */
import {
  answerOf,
  canFollow,
  changeLightField,
  type LightField,
  openLightField,
  takeInHand,
} from '../light/light-field.ts';
import type { LightResult } from '../light/light-types.ts';
import type { Steps } from '../numeric/steps.ts';
import { drive } from './drive.ts';
import type { KeepLightRequest, LightChange, LightHold, RunOptions } from './messages.ts';

let kept: { readonly id: number; readonly field: LightField } | null = null;

/** Computes a field as `light` does, and keeps it under a number instead of the one that was kept. */
export async function keepLight(
  { fieldId, ...request }: KeepLightRequest,
  options: RunOptions,
): Promise<LightResult> {
  kept = null;
  const field = await drive(openLightField(request), options);
  kept = { id: fieldId, field };
  return answerOf(field);
}

/** Null where the field is not here (any more), or cannot follow. */
export async function changeLight(
  { fieldId, crowns, prisms, live }: LightChange,
  options: RunOptions,
): Promise<LightResult | null> {
  if (kept?.id !== fieldId || !canFollow(kept.field, crowns, prisms)) return null;
  const { field } = kept;
  await onKept(field, changeLightField(field, crowns, prisms, live), options);
  return answerOf(field);
}

/** False where the field is not here. */
export async function holdInLight({ fieldId, thing }: LightHold, options: RunOptions): Promise<boolean> {
  if (kept?.id !== fieldId) return false;
  const { field } = kept;
  await onKept(field, takeInHand(field, thing), options);
  return true;
}

/** A change that is broken off leaves a field half changed: such a field is given up. */
async function onKept(field: LightField, steps: Steps<void>, options: RunOptions): Promise<void> {
  const before = kept;
  kept = null;
  await drive(steps, options);
  if (before?.field === field) kept = before;
}
