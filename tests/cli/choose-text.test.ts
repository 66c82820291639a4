import { expect, it } from 'vitest';
import { choiceOf } from '../../src/choose/choice.ts';
import { chooseText } from '../../src/cli/choose-text.ts';
import { inventedField } from '../choose/invented-fields.ts';
import { northWind } from '../years/years-site.ts';

it('sets as many fields beside each other as fit, the others below them, each once with every measure', () => {
  const names = Array.from({ length: 9 }, (_, k) => `Field ${k + 1} by the lane`);
  const choice = choiceOf(
    northWind([]),
    names.map((name) => inventedField(name)),
    null,
  );
  const run = { layout: null, cellM: 2, elapsedMs: 0, files: [], out: '.' };
  const lines = chooseText(choice, run).split('\n');
  const heads = lines.filter((line) => line.startsWith('   '));
  expect(heads.length).toBeGreaterThan(1);
  expect(heads.flatMap((line) => line.match(/Field \d by the lane/g) ?? [])).toEqual(names);
  const table = lines.filter((line) => line.startsWith('  '));
  expect(Math.max(...table.map(({ length }) => length))).toBeLessThanOrEqual(160);
  expect(lines.filter((line) => line.startsWith('  Area '))).toHaveLength(heads.length);
});
