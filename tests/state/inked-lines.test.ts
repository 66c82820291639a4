import { describe, expect, test } from 'vitest';
import { setSite } from '../../src/site/actions/set-site.ts';
import { inkedLines, inkedValueProblem, isInkedValues } from '../../src/state/inked-lines.ts';
import { keptView } from '../../src/state/kept-view.ts';
import { lightBandsOf } from '../../src/state/light-bands.ts';
import { FIRST_VIEW } from '../../src/state/view-slice.ts';
import { lightBandsFrom, lightLimitsProblem } from '../../src/units/bands.ts';
import { smallSite } from './small-site.ts';

const none = FIRST_VIEW.inkedValues;
const document = setSite(smallSite(), { lightToKeep: { share: 0.45, areaShare: 0.7 } });

describe('lines at chosen values', () => {
  test('begin with the light to keep, on the map of shares alone', () => {
    expect(inkedLines({ picture: 'light-share', inkedValues: none, document })).toEqual([
      { value: 0.45, label: '45 %', words: '45 %, the light to keep' },
    ]);
    expect(inkedLines({ picture: 'sun-hours', inkedValues: none, document })).toEqual([]);
    expect(inkedLines({ picture: 'wind-cut', inkedValues: none, document })).toEqual([]);
  });

  test('rise, and say their unit', () => {
    const inkedValues = { ...none, 'sun-hours': [6, 4], 'light-share': [] };
    expect(inkedLines({ picture: 'sun-hours', inkedValues, document }).map(({ words }) => words)).toEqual([
      '4 h of sun a day',
      '6 h of sun a day',
    ]);
    expect(inkedLines({ picture: 'light-share', inkedValues, document })).toEqual([]);
  });

  test('a value that cannot be inked is refused in one sentence', () => {
    expect(inkedValueProblem('light-share', 1.2, [])).toBe(
      '120 % is no line of this map: expected a number above 0 and up to 100 %.',
    );
    expect(inkedValueProblem('sun-hours', 0, [])).toContain('above 0 and up to 24 h');
    expect(inkedValueProblem('daily-light', 20, [20])).toBe('There is a line at 20 mol already.');
    expect(inkedValueProblem('sun-hours', 6, [1, 2, 3, 4, 5])).toContain('take one away');
    expect(inkedValueProblem('sun-hours', 6, [1, 2])).toBeNull();
  });

  test('are kept, and a damaged store is not believed', () => {
    const kept = { ...none, 'sun-hours': [4, 6] };
    expect(keptView({ inkedValues: kept }).inkedValues).toEqual(kept);
    for (const wrong of [null, 3, {}, { ...none, 'sun-hours': [99] }, { ...none, 'light-share': 'x' }])
      expect(isInkedValues(wrong)).toBe(false);
  });
});

describe('limits of the bands of light', () => {
  test('are the site’s own where it has them', () => {
    expect(lightBandsOf(document.site).bands.map(({ from }) => from)).toEqual([0, 0.3, 0.5, 0.68, 0.84]);
    const own = setSite(document, { lightBands: [0.25, 0.4, 0.6, 0.8] });
    const bands = lightBandsOf(own.site);
    expect(bands.bands.map(({ from }) => from)).toEqual([0, 0.25, 0.4, 0.6, 0.8]);
    expect(lightBandsOf(own.site)).toBe(bands);
  });

  test('must rise between 0 and 100 %, and one sentence says which does not', () => {
    expect(lightLimitsProblem([0.3, 0.5, 0.68, 0.84])).toBeNull();
    expect(lightLimitsProblem([0.3, 0.2, 0.68, 0.84])).toBe(
      'Light shade begins at 20 %; expected more than 30 %, where half shade begins, and less than 100 %.',
    );
    expect(lightLimitsProblem([0, 0.5, 0.68, 0.84])).toContain(
      'Half shade begins at 0 %; expected more than 0 %',
    );
    expect(lightLimitsProblem([0.3, 0.5, 0.68])).toContain('expected 4');
    expect(() => lightBandsFrom([0.3, 0.5, 0.68, 1])).toThrow('Open begins at 100 %');
    expect(() => setSite(document, { lightBands: [0.5, 0.4, 0.6, 0.8] })).toThrow(/lightBands.*rise/);
  });
});
