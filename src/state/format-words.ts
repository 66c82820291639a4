/** Directions, slopes and seasons in the words of the trade. */
const COMPASS = [
  'north',
  'north-north-east',
  'north-east',
  'east-north-east',
  'east',
  'east-south-east',
  'south-east',
  'south-south-east',
  'south',
  'south-south-west',
  'south-west',
  'west-south-west',
  'west',
  'west-north-west',
  'north-west',
  'north-north-west',
] as const;
export const EIGHT_DIRECTIONS = COMPASS.filter((_, index) => index % 2 === 0);

/** The nearest of the eight directions: "south-east". */
export const directionWord = (azimuthDeg: number): string =>
  EIGHT_DIRECTIONS[Math.round((((azimuthDeg % 360) + 360) % 360) / 45) % 8];
/** The nearest of the sixteen directions. */
export const fineDirectionWord = (azimuthDeg: number): string =>
  COMPASS[Math.round((((azimuthDeg % 360) + 360) % 360) / 22.5) % 16];

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
