import { expect, it } from 'vitest';
import { lastAnswers } from '../../src/numeric/last-answers.ts';

it('is asked once for what says the same, in whatever object it says it, and forgets what was asked longest ago', () => {
  const asked: string[] = [];
  const sum = lastAnswers(2, (name: string, { values }: { values: Float32Array }) => {
    asked.push(name);
    return values.reduce((total, each) => total + each, 0);
  });
  const of = (...values: number[]) => ({ values: Float32Array.from(values) });
  expect(sum('a', of(1, 2))).toBe(3);
  expect(sum('a', of(1, 2))).toBe(3);
  expect(sum('a', of(1, 3))).toBe(4);
  expect(sum('a', of(1, 2))).toBe(3);
  expect(asked).toEqual(['a', 'a']);
  // The third kind of question: the one that was asked longest ago is forgotten, not the one made first.
  sum('b', of(1));
  sum('a', of(1, 2));
  expect(asked).toEqual(['a', 'a', 'b']);
  sum('a', of(1, 3));
  expect(asked).toEqual(['a', 'a', 'b', 'a']);
});
