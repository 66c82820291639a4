import type { ReferenceLine, Stake, StakePlan } from './stake-plan.ts';
import type { StakedThing } from './staked-thing.ts';

/** What lengths are said in; feet are said with inches where a tape is read. */
export type TapeUnit = 'm' | 'ft';
const M_PER_FOOT = 0.3048;

/** A length to be taped: "12.42 m", or "40 ft 9 in". */
export function tapeText(lengthM: number, unit: TapeUnit): string {
  if (unit === 'm') return `${lengthM.toFixed(2)} m`;
  const inches = Math.round((lengthM / M_PER_FOOT) * 12);
  return `${Math.floor(inches / 12)} ft ${inches % 12} in`;
}

/** A length said in passing: "0.4 m", "1.3 ft". */
export const roughText = (lengthM: number, unit: TapeUnit): string =>
  `${(unit === 'm' ? lengthM : lengthM / M_PER_FOOT).toFixed(1)} ${unit}`;

/** As a tight tape lies on the ground: "From A 12.42 m towards B, then 6.30 m square to the left." */
export function offsetWords(stake: Stake, { a, b }: ReferenceLine, unit: TapeUnit): string {
  const way = stake.backwards ? `away from ${b.letter}` : `towards ${b.letter}`;
  return `From ${a.letter} ${tapeText(stake.alongLine.tapeM, unit)} ${way}, then ${tapeText(stake.square.tapeM, unit)} square to the ${stake.side}.`;
}

/** "A, north-west corner of Pound Field, and B, south-west corner of Pound Field; 99.07 m apart along that side." */
export const lineWords = ({ a, b, length, isSide }: ReferenceLine, unit: TapeUnit): string =>
  `${a.letter}, ${a.words}, and ${b.letter}, ${b.words}; ${tapeText(length.tapeM, unit)} apart${isSide ? ' along that side' : ''}.`;

/** "17.4 m from A and 81.2 m from B": the check by two tapes. */
export const twoTapesWords = ({ fromA, fromB }: Stake, { a, b }: ReferenceLine, unit: TapeUnit): string =>
  `${tapeText(fromA.tapeM, unit)} from ${a.letter} and ${tapeText(fromB.tapeM, unit)} from ${b.letter}`;

/** Lengths of blur said in the tape's small unit: "12 cm", "5 in". */
export const blurText = (lengthM: number, unit: TapeUnit): string =>
  lengthM >= 1
    ? roughText(lengthM, unit)
    : unit === 'm'
      ? `${Math.max(1, Math.round(lengthM * 100))} cm`
      : `${Math.max(1, Math.round((lengthM / M_PER_FOOT) * 12))} in`;

/** The sun is a disc, so that a tip has no edge but a blur: where in it the stake stands. */
export const blurWords = ({ fuzzyM }: Stake, unit: TapeUnit): string =>
  Number.isFinite(fuzzyM)
    ? `the tip fades over ${blurText(2 * fuzzyM, unit)}: the stake marks the middle`
    : 'the tip fades out over many metres: it can hardly be made out';

export const THING_WORDS: Record<StakedThing['kind'], string> = {
  tree: 'tree',
  belt: 'belt',
  block: 'wood',
  wall: 'wall',
  building: 'building',
};

const CROWN_WORDS = {
  ellipsoid: 'the far shoulder of its rounded crown, beyond and below its top',
  dome: 'the far shoulder of its domed crown, beyond and below its top',
  cone: 'the very top of its pointed crown',
  cylinder: 'the far rim of its flat top',
} as const;

/** What of a thing casts the tip that is staked. */
export function castWords(thing: StakedThing, alongM: number | null): string {
  if (thing.crownForm) return CROWN_WORDS[thing.crownForm];
  const place = thing.places.find((each) => each.alongM === alongM)?.words;
  if (thing.kind === 'belt')
    return `the upper edge on its far side, at ${place ?? `${alongM?.toFixed(1)} m from its first end`}`;
  return `the top of ${place ?? `its outline ${alongM?.toFixed(1)} m from its first corner`}`;
}

const GROWS: readonly StakedThing['kind'][] = ['tree', 'belt', 'block'];

/** What the stakes take for granted, in sentences. */
export function takenForGranted(
  { thing, alongM, stakes }: StakePlan,
  ground: string,
  unit: TapeUnit,
): string[] {
  const steps = stakes.map(({ furtherPerMetreM }) => furtherPerMetreM).filter(Number.isFinite);
  const perM = (value: number) => value.toFixed(1);
  const further =
    steps.length === 0
      ? ''
      : ` Were it 1 ${unit} taller, the tips would fall ${perM(Math.min(...steps))} to ${perM(Math.max(...steps))} ${unit} further.`;
  return [
    `${thing.label.charAt(0).toUpperCase()}${thing.label.slice(1)} is ${roughText(thing.heightM, unit)} tall${GROWS.includes(thing.kind) ? ` (end of the season of ${thing.heightYear})` : ''}; its tip is cast by ${castWords(thing, alongM)}.${further}`,
    ...(thing.crownForm ? ['Its crown is as regular as that; one long branch casts a tip of its own.'] : []),
    `Ground: ${ground.charAt(0).toLowerCase()}${ground.slice(1)}.`,
    'The air bends the light as it usually does.',
  ];
}
