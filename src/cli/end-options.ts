import { type Command, Option } from 'commander';
import type { WhatWouldChange } from '../batch/what-would-change.ts';
import type { SceneEnd } from '../scene/ends.ts';

/** What a computing command is told about what is not known of the site. */
export interface EndOptions {
  readonly end?: SceneEnd;
  readonly ends?: boolean;
}

/** Adds the options that compute a map at an end of what is not known, or say what would change it most. */
export function withEndOptions(command: Command, ends: readonly SceneEnd[]): Command {
  return command
    .addOption(
      new Option('--end <NAME>', 'compute with one thing at an end of what is not known of it').choices(ends),
    )
    .addOption(
      new Option('--ends', 'compute each end too, and say what would change the result most').conflicts(
        'end',
      ),
    );
}

/** One line an area: what would change it most, and to what. */
export const changeLines = ({ quantity, areas }: WhatWouldChange): string[] =>
  areas.map(({ name, expected, causes }) => {
    const [{ cause, ends }] = causes;
    const percent = (share: number) => `${(share * 100).toFixed(1)} %`;
    const of = quantity === 'lightShareSeason' ? 'open light' : 'open wind';
    const said = ends.map(({ end, mean }) => `${percent(mean)} ${end ? `with ${end}` : 'by its own error'}`);
    return `${name}: ${cause} would change it most, ${percent(expected)} of ${of} in the growing season becomes ${said.join(' or ')}`;
  });
