import { expect, test } from 'vitest';
import { run } from './run-leeglade.ts';

test('without a command every command there is is named, in one line', async () => {
  const { status, stdout, stderr } = await run();
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr.split('\n')).toHaveLength(2);
  for (const command of ['belts', 'choose', 'growth', 'years']) expect(stderr).toContain(command);
});
