import type { LengthWords } from '../../cuts/cut-words.ts';
import { formatLength } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';

/** Heights of cuts as the person measures; a figure and its unit stay on one line. */
export function useCutLength(): LengthWords {
  const units = useApp((app) => app.unitSystem);
  return (metres) =>
    formatLength(metres, units)
      .replace(/\.0(?=\D)/, '')
      .replace(' ', '\u00a0');
}
