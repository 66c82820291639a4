import type { App } from '../../state/model.ts';
import { fieldShelter } from './field-shelter.ts';

export function shelterLine(app: App): string | null {
  const known = fieldShelter(app);
  if (!known) return null;
  const cut = Math.round(known.seasons[0].mean * 100);
  return cut <= 0 ? 'open to the wind' : `wind cut by ${cut} %`;
}
