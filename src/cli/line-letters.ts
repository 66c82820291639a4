import { BadInputError } from '../units/bad-input.ts';

/** The two points of `--line`. @throws BadInputError when it is not two letters. */
export function lettersOf(text: string): [string, string] {
  const letters = text.split(/[,\s-]+/).filter((part) => part !== '');
  if (letters.length !== 2)
    throw new BadInputError(
      `--line is ${JSON.stringify(text)}; expected two letters of the sketch, such as A,B.`,
    );
  return [letters[0], letters[1]];
}
