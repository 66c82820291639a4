import { lineWords, offsetWords, type TapeUnit, tapeText, twoTapesWords } from '../outside/tape-words.ts';
import type { StakeScore } from '../stakes/score-readings.ts';
import { readingWords, scoreSentences } from '../stakes/score-words.ts';
import type { StakePlan } from '../stakes/stake-plan.ts';
import { blurWords, takenForGranted } from '../stakes/stake-words.ts';
import { clocksWords, dayWords } from '../sun/day-words.ts';

/** The stakes for a person to read. */
export function stakesText(
  plan: StakePlan,
  score: StakeScore | null,
  { unit, ground, pdf }: { readonly unit: TapeUnit; readonly ground: string; readonly pdf: string | null },
): string {
  const { thing, line, stakes, without, notes } = plan;
  const lines = [
    `Shadow of ${thing.label} on ${dayWords(plan.date, true)}, by ${clocksWords(stakes[0].utcMs, plan.timeZone)}`,
    `Tape from ${lineWords(line, unit)} Lengths are as a tight tape lies on the ground.`,
    ...stakes.flatMap((stake) => [
      `${stake.number}. ${stake.time}  ${offsetWords(stake, line, unit)}`,
      `   Check: ${twoTapesWords(stake, line, unit)}; ${tapeText(stake.fromFoot.tapeM, unit)} from ${thing.kind === 'tree' ? 'the stem' : 'under what casts it'}; ${blurWords(stake, unit)}.`,
      ...stake.cautions.map((caution) => `   Mind: ${caution}.`),
    ]),
    ...without.map(({ time, why }) => `No stake for ${time}: ${why}.`),
    ...notes,
    ...takenForGranted(plan, ground, unit).map((sentence) => `Assumed: ${sentence}`),
    'Never look at the sun: watch the ground.',
    ...(score ? scoreLines(score, unit) : []),
    ...(pdf ? [`Written: ${pdf}`] : []),
  ];
  return `${lines.join('\n')}\n`;
}

/** What the readings kept in the site say, one by one and together. */
function scoreLines(score: StakeScore, unit: TapeUnit): string[] {
  return [
    `Readings: ${scoreSentences(score, unit).join(' ')}`,
    ...score.readings.map(
      (scored) => `  ${scored.reading.date} ${scored.reading.time}: ${readingWords(scored, unit)}.`,
    ),
    ...score.left.map(({ reading, why }) => `  ${reading.date} ${reading.time}: not scored: ${why}.`),
  ];
}

/** The same as plain data: metres, degrees, clock times, UTC. */
export function stakesJson({ thing, points, line, ...plan }: StakePlan, score: StakeScore | null): string {
  const answer = {
    of: thing.id,
    label: thing.label,
    kind: thing.kind,
    heightM: thing.heightM,
    heightYear: thing.heightYear,
    date: plan.date,
    timeZone: plan.timeZone,
    alongM: plan.alongM,
    line: { a: line.a, b: line.b, ...line.length },
    points,
    stakes: plan.stakes.map(({ utcMs, ...stake }) => ({ ...stake, utc: new Date(utcMs).toISOString() })),
    without: plan.without,
    notes: plan.notes,
    score,
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
