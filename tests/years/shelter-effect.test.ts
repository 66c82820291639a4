import { expect, test } from 'vitest';
import type { SiteRecord } from '../../src/site/records/site.ts';
import { growthSpeed, shelterEffectOf } from '../../src/years/shelter-effect.ts';

test('a season in the open, or in wind that is speeded up, is a usual one', () => {
  expect(growthSpeed(0, 1.2)).toBe(1);
  expect(growthSpeed(-0.2, 2)).toBe(1);
});

test('growth rises with the wind that is cut, and no further once half of it is', () => {
  expect(growthSpeed(0.25, 1.2)).toBeCloseTo(1.1, 12);
  expect(growthSpeed(0.5, 1.2)).toBeCloseTo(1.2, 12);
  expect(growthSpeed(0.9, 1.2)).toBeCloseTo(1.2, 12);
  expect(growthSpeed(0.9, 1)).toBe(1);
});

test('a site that says nothing reckons with no effect, and holds what is published for the most', () => {
  const site = (shelterEffect?: SiteRecord['shelterEffect']) => ({ shelterEffect }) as SiteRecord;
  // Rees & Grace 1980: shoots a fifth shorter in strong wind.
  expect(shelterEffectOf(site())).toEqual({ usual: 1, most: 1.2 });
  expect(shelterEffectOf(site({ usual: 1.1 }))).toEqual({ usual: 1.1, most: 1.2 });
  expect(shelterEffectOf(site({ usual: 1.5 }))).toEqual({ usual: 1.5, most: 1.5 });
  expect(shelterEffectOf(site({ most: 2 }))).toEqual({ usual: 1, most: 2 });
});
