/** Parts that people say, rising. */
const PARTS: readonly (readonly [number, string])[] = [
  [1 / 10, 'a tenth'],
  [1 / 5, 'a fifth'],
  [1 / 4, 'a quarter'],
  [1 / 3, 'a third'],
  [2 / 5, 'two fifths'],
  [1 / 2, 'half'],
  [3 / 5, 'three fifths'],
  [2 / 3, 'two thirds'],
  [3 / 4, 'three quarters'],
  [4 / 5, 'four fifths'],
  [9 / 10, 'nine tenths'],
];
/** What is left of a whole, or less than this of it, is not worth a figure. */
const NEARLY = 0.03;

/** A share, 0 to 1, as people say it: "none", "a corner", "three quarters", "nearly all", "all". */
export function fractionWords(share: number): string {
  if (share <= 0) return 'none';
  if (share < 0.07) return 'a corner';
  if (share >= 1) return 'all';
  if (share > 1 - NEARLY) return 'nearly all';
  const off = ([part]: readonly [number, string]) => Math.abs(part - share);
  return PARTS.reduce((best, each) => (off(each) < off(best) ? each : best))[1];
}

/** A figure is said as a part where it is that to half a percent, as "about" one to two percent and a tenth of it. */
const SAME = 0.005;
const ABOUT = 0.02;
const ABOUT_OF_PART = 0.1;

/** A share that a person may check against its figure: "a fifth", "about a third", "46 %", "next to nothing". */
export function shareInWords(share: number): string {
  if (share < SAME) return 'next to nothing';
  if (share > 1 - SAME) return 'all';
  const off = ([part]: readonly [number, string]) => Math.abs(part - share);
  const nearest = PARTS.reduce((best, each) => (off(each) < off(best) ? each : best));
  if (off(nearest) <= SAME) return nearest[1];
  if (off(nearest) <= Math.min(ABOUT, ABOUT_OF_PART * nearest[0])) return `about ${nearest[1]}`;
  return `${Math.round(share * 100)} %`;
}

const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');
/** "eleven", "13": whole numbers to twelve in letters. */
export const numberInWords = (count: number): string => NUMBERS[count] ?? String(count);
