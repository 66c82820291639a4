import { blurText, roughText, type TapeUnit } from '../outside/tape-words.ts';
import type { Stake, StakePlan } from './stake-plan.ts';
import type { StakedThing } from './staked-thing.ts';

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
