import { expect, test } from 'vitest';
import { BadInputError } from '../../src/units/bad-input.ts';
import {
  COMPASS_POINTS,
  compassPoint,
  directionWord,
  fineDirectionWord,
  pointByLetters,
} from '../../src/units/compass.ts';

test('the nearest direction, also beyond the circle', () => {
  expect(directionWord(136)).toBe('south-east');
  expect(directionWord(-10)).toBe('north');
  expect(directionWord(359)).toBe('north');
  expect(directionWord(-45)).toBe('north-west');
  expect(fineDirectionWord(203)).toBe('south-south-west');
  expect(fineDirectionWord(-160)).toBe('south-south-west');
  for (const { azimuthDeg, name } of COMPASS_POINTS) expect(fineDirectionWord(azimuthDeg + 360)).toBe(name);
});

test('points however they are written', () => {
  for (const text of ['SW', 'sw', 'south-west', 'South West', 'southwesterly', 'south-western']) {
    expect(compassPoint(text).azimuthDeg).toBe(225);
  }
  expect(compassPoint('NNW').azimuthDeg).toBe(337.5);
  expect(() => compassPoint('up')).toThrow(BadInputError);
});

test('letters alone', () => {
  expect(pointByLetters('wnw')?.azimuthDeg).toBe(292.5);
  expect(pointByLetters('west')).toBeUndefined();
});
