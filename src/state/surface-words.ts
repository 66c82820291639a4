import type { Grid } from '../numeric/grid.ts';
import { surfaceFacts, surfaceProblem } from '../scene/surface-facts.ts';
import { BadInputError } from '../units/bad-input.ts';
import { formatLength, formatShare } from './format-measure.ts';
import type { AppState, Message } from './model.ts';

type Known = Pick<AppState, 'document' | 'terrain' | 'surface' | 'missingFiles' | 'unitSystem'>;

/** The surface counts beside the terrain that was read from a file, and not beside a plane. */
export const surfaceInUse = ({ terrain, surface }: Pick<Known, 'terrain' | 'surface'>): Grid | null =>
  terrain ? surface : null;

/** What the surface file gives, or why it gives nothing; null without one. */
export function surfaceWords(state: Known): Message | null {
  const { terrain, surface, missingFiles, unitSystem } = state;
  const { surfaceFile: file, terrainFile } = state.document.site;
  if (!file) return null;
  if (missingFiles.includes(file))
    return warning(`${file} is not on this device: open it, and its woods shade the site.`);
  if (!terrainFile)
    return warning(`${file} waits for a terrain raster on the same datum, above which its woods stand.`);
  if (!surface || !terrain) return { tone: 'plain', text: `${file} is not read yet.` };
  try {
    const problem = surfaceProblem(surface, terrain, file, terrainFile);
    if (problem) return warning(problem);
  } catch (reason) {
    if (reason instanceof BadInputError) return warning(reason.message);
    throw reason;
  }
  const { cellM, eastM, northM, woodedShare, tallestM, lowestM } = surfaceFacts(surface, terrain);
  const length = (metres: number) => formatLength(metres, unitSystem);
  const box = `${length(eastM)} by ${length(northM)} of land in cells of ${length(cellM)}`;
  const lies =
    Math.abs(lowestM) < LEAST_OFF_M
      ? 'meets the terrain'
      : `lies ${length(Math.abs(lowestM))} ${lowestM < 0 ? 'below' : 'above'} the terrain`;
  return {
    tone: 'plain',
    text: `${file} covers ${box}. Woods up to ${length(tallestM)} stand on ${formatShare(woodedShare)} of it; where it is lowest it ${lies}.`,
  };
}

/** Less than this, m, is not worth words. */
const LEAST_OFF_M = 0.1;
const warning = (text: string): Message => ({ tone: 'warning', text });
