import { describe, expect, test } from 'vitest';
import { lightAnswer } from '../../src/panels/light/light-sentence.ts';
import { enoughByYear } from '../../src/panels/years/enough-by-year.ts';
import type { PatchOutlook } from '../../src/state/model.ts';

const patch = (name: string, enoughLight: boolean, darkFromYear: number | null): PatchOutlook => ({
  id: name,
  name,
  implicit: false,
  shareToKeep: 0.4,
  areaShareToKeep: 0.7,
  year: 20,
  meanLightShare: 0.5,
  areaShareWithEnoughLight: enoughLight ? 0.9 : 0.4,
  enoughLight,
  years: { darkFromYear, darkBy: null, looked: [{ year: 0, meanLightShare: 0.9, enoughLight: true }] },
});

describe('the answer on light', () => {
  test('names the dark patches and the year from which they are', () => {
    const patches = [
      patch('Berry rows', true, null),
      patch('Herb ground', false, 14),
      patch('Low patch', false, 14),
      patch('Bee bank', true, null),
    ];
    expect(lightAnswer(patches)).toEqual({
      figure: '2 of 4',
      sentence: 'patches get enough light in year 20. Herb ground and Low patch are too dark from year 14.',
      dark: true,
    });
  });

  test('warns of the first that will turn dark', () => {
    const patches = [
      patch('Berry rows', true, 31),
      patch('Bee bank', true, 27),
      patch('Herb ground', true, null),
    ];
    expect(lightAnswer(patches).sentence).toBe(
      'patches get enough light in year 20. 2 more become too dark later, Bee bank first, from year 27.',
    );
  });

  test('one patch is answered by its share', () => {
    expect(lightAnswer([patch('Open ground', true, null)])).toMatchObject({
      figure: '90 %',
      sentence: 'of Open ground keeps 40 % of open light or more in year 20: enough.',
    });
  });
});

describe('the curve of patches with enough light', () => {
  test('falls in the year in which a patch turns dark', () => {
    const curve = enoughByYear([patch('A', true, 14), patch('B', true, null)], 40);
    expect(curve?.shares[13]).toBe(1);
    expect(curve?.shares[14]).toBe(0.5);
    expect(curve?.shares[40]).toBe(0.5);
  });
  test('is not drawn before the years have been followed', () => {
    expect(enoughByYear([{ ...patch('A', true, null), years: null }], 40)).toBeNull();
  });
});
