import { availableParallelism } from 'node:os';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { pathFromCaller } from './caller-path.ts';

/** What every computing command is told. */
export interface CommonOptions {
  /** Years after the site's base year. */
  readonly year: number;
  readonly cell: number;
  /** Reading height above ground, metres. */
  readonly height: number;
  readonly field?: string;
  readonly layout?: string;
  readonly out: string;
  readonly json?: boolean;
  readonly threads: number;
  readonly quiet?: boolean;
}

/** A number of a range, for an option. */
export function numberBetween(low: number, high: number, unit: string, whole = false) {
  return (text: string): number => {
    const value = Number(text);
    if (text.trim() === '' || !(value >= low && value <= high) || (whole && !Number.isInteger(value)))
      throw new InvalidArgumentError(
        `found ${JSON.stringify(text)}, expected a ${whole ? 'whole ' : ''}number of ${unit} from ${low} to ${high}.`,
      );
    return value;
  };
}

/** Adds the options that every computing command has. */
export function withCommonOptions(command: Command, defaultHeightM: number): Command {
  return command
    .addOption(
      new Option('--year <N>', 'years after planting')
        .default(20)
        .argParser(numberBetween(0, 200, 'years', true)),
    )
    .addOption(
      new Option('--cell <M>', 'size of a cell in metres')
        .default(0.5)
        .argParser(numberBetween(0.05, 100, 'metres')),
    )
    .addOption(
      new Option('--height <M>', 'height above the ground at which it is read, in metres')
        .default(defaultHeightM)
        .argParser(numberBetween(0, 50, 'metres')),
    )
    .option('--field <NAME>', 'one field instead of all')
    .option('--layout <NAME>', 'one of the alternative layouts')
    .addOption(new Option('--out <DIR>', 'folder for the results').default('.').argParser(pathFromCaller))
    .option('--json', 'print the summary alone, as JSON')
    .addOption(
      new Option('--threads <N>', 'how many threads compute')
        .default(availableParallelism(), 'one a core')
        .argParser(numberBetween(1, 256, 'threads', true)),
    )
    .option('--quiet', 'no progress');
}
