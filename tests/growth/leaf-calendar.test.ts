import { describe, expect, it } from 'vitest';
import {
  DEFAULT_DECIDUOUS,
  LEAF_CALENDARS,
  LEAF_CLASSES,
  leafDays,
  leafShareOfDays,
} from '../../src/growth/leaf-calendar.ts';

/** Day of a common year, 0 = 1 January. */
const dayOf = (month: number, day: number) =>
  (Date.UTC(2027, month - 1, day) - Date.UTC(2027, 0, 1)) / 86_400_000;
const firstDayAbove = (shares: Float32Array, share: number) => shares.findIndex((value) => value >= share);

describe('leaf calendar', () => {
  it('keeps evergreens in leaf all year', () => {
    expect(leafShareOfDays(LEAF_CALENDARS.evergreen, 52, 366).every((share) => share === 1)).toBe(true);
  });

  it('is leafless in January and in full leaf in July, north', () => {
    for (const leafClass of LEAF_CLASSES.filter((name) => LEAF_CALENDARS[name].winterShare === 0)) {
      for (const latDeg of [38, 45.1, 52, 60]) {
        const shares = leafShareOfDays(LEAF_CALENDARS[leafClass], latDeg, 365);
        expect(shares[dayOf(1, 15)]).toBe(0);
        expect(shares[dayOf(7, 15)]).toBe(1);
        expect(shares[dayOf(12, 31)]).toBe(0);
      }
    }
  });

  it('keeps half of the leaves of privets through the winter, and sheds and renews the rest', () => {
    const calendar = LEAF_CALENDARS['semi-evergreen'];
    for (const latDeg of [38, 45.1, 52, 60]) {
      const shares = leafShareOfDays(calendar, latDeg, 365);
      expect(shares[dayOf(2, 1)]).toBe(0.5);
      expect(shares[dayOf(7, 15)]).toBe(1);
      expect(Math.min(...shares)).toBe(0.5);
      const later = leafShareOfDays(LEAF_CALENDARS['very late'], latDeg, 365);
      for (let day = 0; day < 365; day++) expect(shares[day]).toBeGreaterThanOrEqual(later[day]);
    }
  });

  it('is mirrored by half a year, south, in every class and at every latitude', () => {
    for (const leafClass of LEAF_CLASSES)
      for (const latDeg of [25, 34, 43.6, 52, 58, 70]) {
        const north = leafShareOfDays(LEAF_CALENDARS[leafClass], latDeg, 366);
        const south = leafShareOfDays(LEAF_CALENDARS[leafClass], -latDeg, 366);
        for (let day = 0; day < 366; day++) expect(south[day]).toBeCloseTo(north[(day + 183) % 366], 6);
      }
    const south = leafShareOfDays(DEFAULT_DECIDUOUS, -43.6, 366);
    expect(south[dayOf(1, 15)]).toBe(1);
    expect(south[dayOf(7, 15)]).toBe(0);
  });

  it('gives the days by which leaves are out and down, as the shares have them', () => {
    for (const leafClass of LEAF_CLASSES.filter((name) => name !== 'evergreen'))
      for (const latDeg of [45.1, -43.6]) {
        const calendar = LEAF_CALENDARS[leafClass];
        const shares = leafShareOfDays(calendar, latDeg, 365);
        const days = leafDays(calendar, latDeg)!;
        const half = calendar.winterShare + (1 - calendar.winterShare) / 2;
        for (const { halfDay } of [days.out, days.fall]) {
          const at = [shares[Math.floor(halfDay + 364.5) % 365], shares[Math.ceil(halfDay + 364.5) % 365]];
          expect(Math.min(...at)).toBeLessThanOrEqual(half);
          expect(Math.max(...at)).toBeGreaterThanOrEqual(half);
        }
        expect(shares[Math.ceil(days.out.lastDay) % 365]).toBe(1);
        expect(shares[Math.ceil(days.fall.lastDay) % 365]).toBeCloseTo(calendar.winterShare, 6);
      }
    expect(leafDays(LEAF_CALENDARS.evergreen, 45)).toBeNull();
  });

  it('is mirrored in a common year too, between two days', () => {
    const north = leafShareOfDays(DEFAULT_DECIDUOUS, 43.6, 365);
    const south = leafShareOfDays(DEFAULT_DECIDUOUS, -43.6, 365);
    for (let day = 0; day < 365; day++) {
      const before = north[(day + 182) % 365];
      const after = north[(day + 183) % 365];
      expect(south[day]).toBeCloseTo((before + after) / 2, 1);
    }
  });

  it('opens later and drops earlier towards the pole', () => {
    const mild = leafShareOfDays(DEFAULT_DECIDUOUS, 44, 365);
    const cold = leafShareOfDays(DEFAULT_DECIDUOUS, 56, 365);
    expect(firstDayAbove(cold, 0.5) - firstDayAbove(mild, 0.5)).toBe(30);
    expect(cold.reduce((sum, share) => sum + share, 0)).toBeLessThan(
      mild.reduce((sum, share) => sum + share, 0),
    );
  });

  it('opens by a ramp, not in a day', () => {
    const shares = leafShareOfDays(DEFAULT_DECIDUOUS, 50, 365);
    for (let day = 1; day < 365; day++) {
      expect(Math.abs(shares[day] - shares[day - 1])).toBeLessThanOrEqual(0.05);
    }
    expect(firstDayAbove(shares, 0.5)).toBe(dayOf(4, 22));
  });

  it('puts the classes in their order', () => {
    const out = (['early', 'usual', 'late', 'very late'] as const).map((name) =>
      firstDayAbove(leafShareOfDays(LEAF_CALENDARS[name], 50, 365), 0.5),
    );
    expect(out).toEqual([...out].sort((a, b) => a - b));
    expect(new Set(out).size).toBe(4);
  });
});
