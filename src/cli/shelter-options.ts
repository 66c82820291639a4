import { type Command, InvalidArgumentError, Option } from 'commander';
import { CHAINED_BELTS_SAYS, SHELTER_GUESSES, USUAL_SHELTER_OPTIONS } from '../wind/shelter-guesses.ts';
import type { ShelterOptions } from '../wind/shelter-types.ts';

/** Beaufort 6 begins here, m/s at 10 m. */
export const GALE_MPS = 10.8;

/** What a command is told about the guesses of the shelter engine. */
export interface GuessOptions {
  readonly without?: readonly string[];
  readonly chained?: boolean;
}

const WORDS = SHELTER_GUESSES.map(({ word }) => word);

function guessWords(text: string): readonly string[] {
  const words = text.split(',').map((word) => word.trim());
  for (const word of words)
    if (!WORDS.includes(word))
      throw new InvalidArgumentError(`"${word}" is no guess of the engine; there are ${WORDS.join(', ')}.`);
  return words;
}

/** Adds the options that leave guesses out, or take the other rule for several belts. */
export function withGuessOptions(command: Command): Command {
  return command
    .addOption(new Option('--without <LIST>', `leave out guesses: ${WORDS.join(',')}`).argParser(guessWords))
    .addOption(new Option('--chained', CHAINED_BELTS_SAYS));
}

/** The engine's options as a command was told. */
export const shelterOptionsOf = ({ without = [], chained }: GuessOptions): ShelterOptions => ({
  ...USUAL_SHELTER_OPTIONS,
  ...Object.fromEntries(SHELTER_GUESSES.map(({ key, word }) => [key, !without.includes(word)])),
  chainedBelts: chained === true,
});
