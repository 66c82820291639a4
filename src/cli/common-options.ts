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

/** Gathers an option that may be given several times; `[]` is its default. */
export const severalTimes = (text: string, before: readonly string[]): readonly string[] => [...before, text];

export const yearOption = (what = 'years after planting'): Option =>
  new Option('--year <N>', what).default(20).argParser(numberBetween(0, 200, 'years', true));

/** @param what what is at that height; the unit is said here. */
export const heightOption = (what: string, defaultM: number): Option =>
  new Option('--height <M>', `${what}, in metres`)
    .default(defaultM)
    .argParser(numberBetween(0, 50, 'metres'));

export const layoutOption = (): Option => new Option('--layout <NAME>', 'one of the alternative layouts');

/** A command that is asked about one spot. */
export const spotOption = (): Option =>
  new Option('--at <LAT,LON>', 'the spot: latitude and longitude, such as 45.1,-64.5').makeOptionMandatory();

export const threadsOption = (): Option =>
  new Option('--threads <N>', 'how many threads compute')
    .default(1)
    .argParser(numberBetween(1, 256, 'threads', true));

/** Adds the options that every computing command has. */
export function withCommonOptions(command: Command, defaultHeightM: number): Command {
  return command
    .addOption(yearOption())
    .addOption(
      new Option('--cell <M>', 'size of a cell in metres')
        .default(0.5)
        .argParser(numberBetween(0.05, 100, 'metres')),
    )
    .addOption(heightOption('height above the ground at which it is read', defaultHeightM))
    .option('--field <NAME>', 'one field instead of all')
    .addOption(layoutOption())
    .addOption(new Option('--out <DIR>', 'folder for the results').default('.').argParser(pathFromCaller))
    .option('--json', 'print the summary alone, as JSON')
    .addOption(threadsOption().default(availableParallelism(), 'one a core'))
    .option('--quiet', 'no progress');
}
