/** Slopes and lists in the words of the trade. */
import { directionWord } from '../units/compass.ts';

/** "falls 1 in 15 to the south-east"; under a quarter of a degree "level". */
export function fallInWords(fallDeg: number, towardDeg: number): string {
  if (!Number.isFinite(fallDeg)) return 'not known';
  if (fallDeg < 0.25) return 'level';
  const run = 1 / Math.tan((fallDeg * Math.PI) / 180);
  return `falls 1 in ${run < 10 ? Number(run.toFixed(1)) : Math.round(run)} to the ${directionWord(towardDeg)}`;
}

/** "Herb ground", "Herb ground and Low patch", "Herb ground, Low patch and 2 more". */
export function listInWords(names: readonly string[], most = 3): string {
  if (names.length === 0) return '';
  if (names.length === 1) return names[0];
  if (names.length <= most) return `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
  return `${names.slice(0, most - 1).join(', ')} and ${names.length - most + 1} more`;
}

export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
