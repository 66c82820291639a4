import { CommanderError } from 'commander';
import { JobError } from '../jobs/messages.ts';
import { BadInputError } from '../units/bad-input.ts';

/** 0 done, 1 failed, 2 the input or the call is wrong. */
export type ExitStatus = 0 | 1 | 2;

/** The input is wrong and the command has already said what is, as its result. */
export class ProblemsListed extends Error {}

const oneLine = (text: string): string => text.trim().replace(/\s*\n\s*/g, ' ');

/** The exit status of what ended a command, and the one line that says why. */
export function exitOf(error: unknown): { readonly status: ExitStatus; readonly line: string | null } {
  if (error instanceof CommanderError) {
    // Commander has already said what was wrong with the call; help and version are no fault.
    return { status: error.exitCode === 0 ? 0 : 2, line: null };
  }
  if (error instanceof ProblemsListed) return { status: 2, line: null };
  if (error instanceof BadInputError) return { status: 2, line: oneLine(error.message) };
  if (error instanceof JobError && error.code === 'bad-input')
    return { status: 2, line: oneLine(error.message) };
  const message = error instanceof Error ? error.message : String(error);
  return { status: 1, line: oneLine(`Failed: ${message}`) };
}
