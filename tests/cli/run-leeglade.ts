import { spawnSync } from 'node:child_process';

export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command line as a person does, in a process of its own. */
export function leeglade(...args: string[]): Ran {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'src/cli/main.ts', ...args],
    { encoding: 'utf8', env: { ...process.env, npm_lifecycle_event: '', NODE_OPTIONS: '' } },
  );
  return { status, stdout, stderr };
}
