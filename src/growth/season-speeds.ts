/**
 * How fast a plant grew in each year's season against a usual one (1): shelter speeds growth. Seasons before the first
 * are usual, those after the last are as the last.
 */
export interface SeasonSpeeds {
  readonly firstYear: number;
  readonly factor: Float32Array;
}

const speedOf = ({ firstYear, factor }: SeasonSpeeds, calendarYear: number): number =>
  calendarYear < firstYear ? 1 : factor[Math.min(calendarYear - firstYear, factor.length - 1)];

/**
 * Growth of the seasons from one calendar year to another, both included, in usual seasons. Where the last lies before
 * the first it is the growth of those between, taken back: below 0.
 */
export function seasonsGrown(speeds: SeasonSpeeds | undefined, firstYear: number, lastYear: number): number {
  if (!speeds) return lastYear - firstYear + 1;
  let sum = 0;
  for (let year = firstYear; year <= lastYear; year++) sum += speedOf(speeds, year);
  for (let year = lastYear + 1; year < firstYear; year++) sum -= speedOf(speeds, year);
  return sum;
}
