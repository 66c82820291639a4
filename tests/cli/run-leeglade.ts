import { spawnSync } from 'node:child_process';
import { vi } from 'vitest';
import { leeglade } from '../../src/cli/leeglade.ts';

export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a command in this process, with what it writes caught. */
export async function run(...args: string[]): Promise<Ran> {
  const written = { stdout: '', stderr: '' };
  const caught = (['stdout', 'stderr'] as const).map((stream) =>
    vi.spyOn(process[stream], 'write').mockImplementation((text) => {
      written[stream] += String(text);
      return true;
    }),
  );
  try {
    return { status: await leeglade(args), ...written };
  } finally {
    for (const spy of caught) spy.mockRestore();
  }
}

/** Runs the command line as a person does, in a process of its own. */
export function runApart(args: readonly string[], env: Record<string, string> = {}): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['.tools/leeglade.mjs', ...args], {
    encoding: 'utf8',
    env: { ...process.env, npm_lifecycle_event: '', NODE_OPTIONS: '', ...env },
  });
  return { status, stdout, stderr };
}
