import { BadInputError } from '../units/bad-input.ts';

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`;
const numberOf = (text: string): number => Number(text.replace(',', '.'));
const degOf = (gradient: number): number => (Math.atan(gradient) * 180) / Math.PI;

/**
 * How steeply ground falls, as people say it, in degrees below the horizontal: "1 in 15", "1:15", "7 %", "4°", "level".
 * @throws BadInputError when it cannot be read or is steeper than 60°.
 */
export function fallDegFromText(text: string): number {
  const tidy = text.trim().toLowerCase();
  if (/^(level|flat|0)$/.test(tidy)) return 0;
  const oneIn = new RegExp(`^${NUMBER}\\s*(?:in|:|/)\\s*${NUMBER}$`).exec(tidy);
  const percent = new RegExp(`^${NUMBER}\\s*(?:%|percent|per cent)$`).exec(tidy);
  const degrees = new RegExp(`^${NUMBER}\\s*(?:°|deg|degrees?)$`).exec(tidy);
  let fallDeg = Number.NaN;
  if (oneIn) fallDeg = degOf(numberOf(oneIn[1]) / numberOf(oneIn[2]));
  else if (percent) fallDeg = degOf(numberOf(percent[1]) / 100);
  else if (degrees) fallDeg = numberOf(degrees[1]);
  if (!(fallDeg >= 0 && fallDeg <= 60)) {
    throw new BadInputError(
      `"${text.trim()}" is not a fall of the ground: expected "1 in 15", "7 %" or "4°", up to 60°.`,
    );
  }
  return fallDeg;
}
