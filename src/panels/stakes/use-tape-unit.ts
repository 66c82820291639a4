import type { TapeUnit } from '../../outside/tape-words.ts';
import { useApp } from '../../state/store.ts';

/** The unit of the person's tape. */
export const useTapeUnit = (): TapeUnit => useApp((app) => (app.unitSystem === 'metric' ? 'm' : 'ft'));
