import { lineWords, offsetWords, type TapeUnit, twoTapesWords } from '../outside/tape-words.ts';
import { dayWords } from '../sun/day-words.ts';
import type { SpotScore } from '../windspots/score-spots.ts';
import { readingWords, scoreSentences, waitingWords } from '../windspots/score-words.ts';
import type { SpotPlan } from '../windspots/spot-plan.ts';
import {
  distanceWords,
  expectedWords,
  howToRead,
  partsWords,
  SPOT_CAUTIONS,
  speedsWords,
  takenForGranted,
  windWords,
} from '../windspots/spot-words.ts';

/** What two meters should show, for a person to read. */
export function windSpotsText(
  plan: SpotPlan,
  score: SpotScore | null,
  {
    unit,
    ground,
    written,
  }: { readonly unit: TapeUnit; readonly ground: string; readonly written: readonly string[] },
): string {
  const { belt, line, spots } = plan;
  const lines = [
    `Wind behind ${belt.label} on ${dayWords(plan.date, true)}, in ${windWords(plan.wind, unit)}`,
    `Tape from ${lineWords(line, unit)} Lengths are as a tight tape lies on the ground.`,
    ...spots.flatMap((spot) => [
      `${spot.number}. ${spot.words}: expect ${expectedWords(spot.expected)}.`,
      `   ${speedsWords(spot.expected, plan.openMps, unit)}; ${distanceWords(spot, unit)}.`,
      `   ${offsetWords(spot, line, unit)} Check: ${twoTapesWords(spot, line, unit)}.`,
      ...partsWords(spot.expected).map((part) => `   Not known: ${part}.`),
      ...spot.cautions.map((caution) => `   Mind: ${caution}.`),
    ]),
    ...plan.without.map(({ words, why }) => `Nothing is promised ${words}: ${why}.`),
    ...plan.notes,
    ...takenForGranted(plan, ground, unit).map((sentence) => `Assumed: ${sentence}`),
    ...howToRead(plan, unit),
    ...SPOT_CAUTIONS,
    ...(score ? scoreLines(score, unit) : []),
    ...written.map((file) => `Written: ${file}`),
  ];
  return `${lines.join('\n')}\n`;
}

/** What is kept in the site, one by one and together. */
function scoreLines(score: SpotScore, unit: TapeUnit): string[] {
  return [
    `Readings: ${scoreSentences(score, unit).join(' ')}`,
    ...score.readings.map(
      (scored) => `  ${scored.reading.date} ${scored.kept.name}: ${readingWords(scored, unit)}.`,
    ),
    ...score.waiting.map((kept) => `  ${kept.expected.date} ${kept.name}: ${waitingWords(kept)}.`),
    ...score.left.map(({ kept, why }) => `  ${kept.reading?.date} ${kept.name}: not scored: ${why}.`),
  ];
}

/** The same as plain data: shares of open wind, metres, degrees. */
export function windSpotsJson({ belt, points, line, ...plan }: SpotPlan, score: SpotScore | null): string {
  const { middle: _, id, ...stands } = belt;
  const answer = {
    of: id,
    ...stands,
    date: plan.date,
    wind: plan.wind,
    openMps: plan.openMps,
    alongM: plan.alongM,
    line: { a: line.a, b: line.b, ...line.length },
    points,
    open: plan.open,
    spots: plan.spots,
    without: plan.without,
    notes: plan.notes,
    score,
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
