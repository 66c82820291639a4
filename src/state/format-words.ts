/** Slopes and lists in the words of the trade. */
import { directionWord } from '../units/compass.ts';

/** "falls 1 in 15 to the south-east"; under a quarter of a degree "level". */
export function fallInWords(fallDeg: number, towardDeg: number): string {
  if (!Number.isFinite(fallDeg)) return 'not known';
  if (fallDeg < 0.25) return 'level';
  const run = 1 / Math.tan((fallDeg * Math.PI) / 180);
  return `falls 1 in ${run < 10 ? Number(run.toFixed(1)) : Math.round(run)} to the ${directionWord(towardDeg)}`;
}

export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
