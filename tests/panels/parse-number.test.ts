import { expect, test } from 'vitest';
import { parseNumber } from '../../src/panels/parts/parse-number.ts';

test.each([
  ['3.5', 3.5],
  ['3,5', 3.5],
  [' 12 ', 12],
  ['−4', -4],
  ['.5', 0.5],
  ['1 200', 1200],
  ['', null],
  ['abc', null],
  ['3m', null],
  ['1,2,3', null],
])('%s', (text, value) => {
  expect(parseNumber(text)).toBe(value);
});
