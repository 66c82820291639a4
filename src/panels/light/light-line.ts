import { plural } from '../../state/format-words.ts';
import type { App } from '../../state/model.ts';

export function lightLine(app: App): string | null {
  const patches = app.outlook.result;
  if (!patches || patches.length === 0) return null;
  const dark = patches.filter((patch) => !patch.enoughLight).length;
  return dark === 0 ? 'enough for every patch' : `${plural(dark, 'patch', 'patches')} too dark`;
}
