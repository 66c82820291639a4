import { lineWords } from '../outside/tape-words.ts';
import { takenForGranted } from '../stakes/stake-words.ts';
import { gatheredCautions, outdoorPages } from './outdoor-page.ts';
import type { PageModel } from './page-model.ts';
import type { StakesPageInput } from './stakes-input.ts';
import { STAKE_HEADS, stakeColumns } from './stakes-table.ts';

const CAUTIONS = [
  'Never look at the sun, not even for a moment and not through a level, sight or camera: watch the ground. Look for ditches, edges, live fences, machines and animals before you walk with a tape.',
  'Near overhead lines raise no pole and no steel tape; where something may be buried lay a marker and drive nothing in. In wind stay out from under the trees.',
];

/** The page of shadow stakes to take outside: sketch, offsets, room to write, how to do it, what it takes for granted. */
export function stakesPages(input: StakesPageInput): PageModel[] {
  const { plan, unit } = input;
  const { line, thing } = plan;
  const { a, b } = line;
  return outdoorPages({
    input,
    title: `Shadow stakes: ${thing.label}`,
    under: `${input.day}, by ${input.clocks}`,
    sketched: {
      line,
      places: plan.stakes.map(({ number, lonLat, foot, castOver }) => ({
        number,
        lonLat,
        foot,
        root: thing.kind === 'tree' ? thing.middle : castOver,
      })),
      also: [thing.middle],
    },
    beside: [
      ['The line to tape from', [lineWords(line, unit)]],
      ['Taken for granted', takenForGranted(plan, input.ground, unit)],
    ],
    columns: stakeColumns(plan, unit),
    heads: STAKE_HEADS,
    rows: plan.stakes,
    notes: [
      [
        'How it is done',
        [
          `1. Set a watch by a telephone. Pull a tape from ${a.letter} to ${b.letter}; all lengths are as a tight tape lies on the ground.`,
          `2. At the length along it go off square (3, 4, 5), left or right as seen from ${a.letter}; check by the two tapes.`,
          '3. At the minute find the tip, in the middle of its fading edge. Tape from stake to tip: beyond or short, then right or left, with your back to the sun.',
          '4. Type it back under Shadow stakes: the site says how far the model missed.',
        ],
      ],
      ['To know before', [...gatheredCautions(plan.stakes, 'Stake'), ...plan.notes]],
      ['Times without a stake', plan.without.map(({ time, why }) => `${time}: ${why}.`)],
    ],
    cautions: CAUTIONS,
  });
}
