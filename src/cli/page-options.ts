import { type Command, Option } from 'commander';
import type { TapeUnit } from '../outside/tape-words.ts';
import { PAPER_SIZES, type PaperSize } from '../sheets/paper.ts';
import { pathFromCaller } from './caller-path.ts';
import { layoutOption } from './common-options.ts';

export const paperOption = (): Option =>
  new Option('--paper <SIZE>', 'paper of the page').choices(Object.keys(PAPER_SIZES)).default('A4');

/** What a command is told whose answer is taken outside with a tape. */
export interface TapePageOptions {
  /** Letters of the two points to tape from. */
  readonly line?: string;
  readonly layout?: string;
  readonly unit: TapeUnit;
  readonly paper: PaperSize;
  readonly pdf?: string;
}

/** Adds the options of the page that is taken outside. */
export const withTapePage = (command: Command): Command =>
  command
    .option('--line <A,B>', 'letters of the two points to tape from; the nearest side of a field otherwise')
    .addOption(layoutOption())
    .addOption(new Option('--unit <UNIT>', 'unit of the tape').choices(['m', 'ft']).default('m'))
    .addOption(paperOption())
    .addOption(
      new Option('--pdf <FILE>', 'writes the page to take outside as well').argParser(pathFromCaller),
    );
