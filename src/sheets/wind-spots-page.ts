import { lineWords } from '../outside/tape-words.ts';
import type { SpotPlan, WindSpot } from '../windspots/spot-plan.ts';
import {
  howToRead,
  meterUnit,
  percent,
  pointsText,
  rangeText,
  SPOT_CAUTIONS,
  takenForGranted,
  windWords,
} from '../windspots/spot-words.ts';
import type { BlankColumn } from './blank-table.ts';
import type { OutdoorPageInput } from './outdoor-input.ts';
import { gatheredCautions, outdoorPages } from './outdoor-page.ts';
import type { PageModel } from './page-model.ts';
import type { LengthUnit } from './plan-input.ts';
import { tapeColumns } from './tape-columns.ts';

/** All that the page of wind spots shows. */
export interface WindSpotsPageInput extends OutdoorPageInput {
  readonly plan: SpotPlan;
}

/** The page to take outside with two hand meters: sketch, offsets, what is expected, room to write, how to do it. */
export function windSpotsPages(input: WindSpotsPageInput): PageModel[] {
  const { plan, unit } = input;
  const { belt, line, spots } = plan;
  const wind = windWords(plan.wind, unit);
  return outdoorPages({
    input,
    title: `Wind behind ${belt.label}`,
    under: `${input.day}, written before measuring`,
    sketched: {
      line,
      places: spots.map(({ number, lonLat, foot, crossing }) => ({ number, lonLat, foot, root: crossing })),
      also: [belt.middle],
    },
    beside: [
      ['The wind that is waited for', [`${wind.charAt(0).toUpperCase()}${wind.slice(1)}.`]],
      ['The line to tape from', [lineWords(line, unit)]],
      ['Taken for granted', takenForGranted(plan, input.ground, unit)],
    ],
    columns: columns(plan, unit),
    heads: {
      printed: 'Where the meter goes, and what it should show',
      toWrite: 'What was read, to be written in',
    },
    rows: spots,
    notes: [
      ['How it is done', howToRead(plan, unit).map((step, i) => `${i + 1}. ${step}`)],
      ['To know before', [...gatheredCautions(spots, 'Spot'), ...plan.notes]],
      ['What makes the range', [...spots.map(rangeSentence), notKnown(spots)]],
      ['Places for which nothing is promised', plan.without.map(({ words, why }) => `${words}: ${why}.`)],
    ],
    cautions: SPOT_CAUTIONS,
  });
}

/** By the function and behind measured belts. */
function rangeSentence({ number, expected: { share, byFunction, measured } }: WindSpot): string {
  const others = measured ? `; behind measured belts ${rangeText(measured)}` : '; nobody measured there';
  return `${number}: by the function ${percent(share)}, ${rangeText(byFunction)} with what is not known${others}.`;
}

/** What is not known over all spots, by how much it moves any of them, the most first. */
function notKnown(spots: readonly WindSpot[]): string {
  const most = new Map<string, number>();
  for (const { name, below, above } of spots.flatMap(({ expected }) => expected.parts))
    most.set(name, Math.max(most.get(name) ?? 0, below, above));
  const parts = [...most].sort((a, b) => b[1] - a[1]).map(([name, share]) => `${name} ${pointsText(share)}`);
  return `Not known, at most: ${parts.join(', ')}.`;
}

const columns = ({ line }: SpotPlan, unit: LengthUnit): BlankColumn<WindSpot>[] => [
  { share: 7, head: ['no.'], text: ({ number }) => String(number), bold: true },
  {
    share: 15,
    head: ['heights', 'behind it'],
    text: ({ distanceH }) => distanceH.toFixed(1),
  },
  ...tapeColumns(line, unit, 25),
  {
    share: 24,
    head: ['expected, of', 'the open wind'],
    text: ({ expected }) => rangeText(expected),
    bold: true,
  },
  { share: 14, head: ['day and', 'time'] },
  { share: 17, head: ['open meter,', `mean ${meterUnit(unit)}`] },
  { share: 17, head: ['there,', `mean ${meterUnit(unit)}`] },
  { share: 14, head: ['wind', 'from'] },
  { share: 15, head: ['minutes'] },
];
