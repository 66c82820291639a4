import type { ShelterOptions } from './shelter-types.ts';

/** One part of the shelter model that a person can leave out: a guess of ours, or a published rule that rests on one. */
export interface ShelterGuess {
  readonly key: Exclude<keyof ShelterOptions, 'chainedBelts'>;
  /** What the command line calls it. */
  readonly word: string;
  readonly name: string;
  /** One sentence: what it does, and where it comes from. */
  readonly says: string;
}

export const SHELTER_GUESSES: readonly ShelterGuess[] = [
  {
    key: 'obliqueWind',
    word: 'oblique-wind',
    name: 'Oblique wind',
    says: 'A wind that meets a belt at a slant crosses more of it: width and foliage grow by the slant, at most fourfold. Our guess; published shelter shrinks faster or slower.',
  },
  {
    key: 'parallelWind',
    word: 'parallel-wind',
    name: 'Wind along a belt',
    says: 'Beside a belt that the wind blows along it is stiller to four heights (published); half of what the belt takes straight on, less with distance, is our guess.',
  },
  {
    key: 'shortThings',
    word: 'short-things',
    name: 'Short things',
    says: 'Beyond 1.4 times its length across the wind a thing shelters less and less. Our guess: a shed throws no lee of 35 heights.',
  },
  {
    key: 'youngBelts',
    word: 'young-belts',
    name: 'Young belts and trees',
    says: 'What is no taller than the reading height does nothing, what is twice as tall all, between them a part. Our guess.',
  },
  {
    key: 'raisedFeet',
    word: 'raised-feet',
    name: 'Raised feet',
    says: 'Free space below the foliage opens a belt by its share of the height. Our guess.',
  },
  {
    key: 'endsAndGaps',
    word: 'ends-and-gaps',
    name: 'Ends and gaps',
    says: 'Beside an end and in a gap the wind is up to 20 % faster (published); to two heights aside, two upwind and five downwind is our guess.',
  },
  {
    key: 'insideWoods',
    word: 'inside-woods',
    name: 'Inside woods',
    says: 'Inside a wood it grows as still as the stillest place behind it, within a few heights of its edge. Our guess.',
  },
  {
    key: 'scatteredTrees',
    word: 'scattered-trees',
    name: 'Scattered trees',
    says: 'Trees outside belts and woods slow the wind by their silhouettes on the ground (Raupach 1992, 1994); felt to 20 tree heights downwind, and no denser than half the ground, are our guesses.',
  },
  {
    key: 'landform',
    word: 'landform',
    name: 'Crests and hollows',
    says: 'Wind is faster over crests and slower in hollows by twice what potential flow says (Hunt 1980; Taylor & Lee 1984); between 0.5 and 1.6 times, our bounds. Land without a file or spot heights is even.',
  },
];

/** All guesses on, the smallest share of several belts. */
export const USUAL_SHELTER_OPTIONS: ShelterOptions = {
  obliqueWind: true,
  parallelWind: true,
  shortThings: true,
  youngBelts: true,
  raisedFeet: true,
  endsAndGaps: true,
  insideWoods: true,
  scatteredTrees: true,
  landform: true,
  chainedBelts: false,
};

/** The other rule for several belts, in words. */
export const CHAINED_BELTS_SAYS =
  'Where several belts act, what each leaves is multiplied, instead of counting the one that leaves least (the published rule). It promises more shelter among close belts.';

/** What of the usual model is changed, in one sentence; null: nothing. */
export function departureInWords(options: ShelterOptions): string | null {
  const out = SHELTER_GUESSES.filter(({ key }) => !options[key]).map(({ name }) => name.toLowerCase());
  const parts = [
    ...(out.length > 0 ? [`Without our guesses on ${out.join(', ')}`] : []),
    ...(options.chainedBelts ? ['what several belts leave is multiplied'] : []),
  ];
  if (parts.length === 0) return null;
  const said = parts.join('; ');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
}
