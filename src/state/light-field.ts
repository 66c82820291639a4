import { takenField } from '../site/chosen-features.ts';
import type { AppState } from './model.ts';

/**
 * Id of the field whose light is worked out: while fields are compared all of them (undefined), afterwards the one that
 * is taken, in finer cells.
 */
export function lightField(state: Pick<AppState, 'step' | 'document'>): string | undefined {
  if (state.step === 'ground' || state.step === 'shelter') return undefined;
  const taken = takenField(state.document);
  return taken ? String(taken.id) : undefined;
}
