import { expect, test } from 'vitest';
import { parseTimes } from '../../src/panels/stakes/parse-times.ts';

test.each([
  ['9:30, 12.15 and 15', ['09:30', '12:15', '15:00']],
  ['16:00 09:00;16:00', ['09:00', '16:00']],
  ['', []],
])('%s', (text, times) => expect(parseTimes(text)).toEqual({ times }));

test.each(['24:00', '9:60', 'noon', '9:5'])('%s is no clock time', (text) =>
  expect(parseTimes(`10:00, ${text}`)).toEqual({ wrong: text }),
);
