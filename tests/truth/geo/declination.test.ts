import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { declinationAt, magneticToTrueDeg } from '../../../src/geo/declination.ts';

const rows = readFileSync(join(import.meta.dirname, 'fixtures/wmm2025-test-values.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number));

// The published times are decimal years of 365 days from 1 January.
const dateOf = (decimalYear: number): Date => {
  const year = Math.floor(decimalYear);
  return new Date(Date.UTC(year, 0, 1) + (decimalYear - year) * 365 * 86_400_000);
};

describe('magnetic declination', () => {
  it('reproduces the published test values of WMM2025 to 0.01°', () => {
    // The model's five years end in the library on 2029-11-13: every published row lies within.
    expect(rows).toHaveLength(100);
    const errors = rows.map(([decimalYear, altitudeKm, latDeg, lonDeg, publishedDeg]) => {
      const found = declinationAt([lonDeg, latDeg], dateOf(decimalYear), altitudeKm * 1000);
      expect(found.withinModelYears).toBe(true);
      const difference = Math.abs(found.declinationDeg - publishedDeg) % 360;
      return Math.min(difference, 360 - difference);
    });
    console.log(`declination: worst ${Math.max(...errors).toFixed(4)}° of ${errors.length}`);
    // Half of the last published digit, and a little for the rounding of the coefficients.
    expect(Math.max(...errors)).toBeLessThan(0.01);
  });

  it('agrees with a published calculation for 42.283° N, 71.35° W, 1 km, 2028-07-04: 13.6891° W', () => {
    // MathWorks, documentation of wrldmagm, worked with WMM2025.
    const found = declinationAt([-71.35, 42.283], new Date('2028-07-04T00:00:00Z'), 1000);
    expect(Math.abs(found.declinationDeg + 13.6891)).toBeLessThan(0.001);
  });

  it('says when a date lies outside the model, and keeps the nearest year', () => {
    const late = declinationAt([-64.5, 45.1], new Date('2041-05-01T00:00:00Z'));
    const end = declinationAt([-64.5, 45.1], new Date('2029-11-01T00:00:00Z'));
    expect(late.withinModelYears).toBe(false);
    expect(end.withinModelYears).toBe(true);
    expect(Math.abs(late.declinationDeg - end.declinationDeg)).toBeLessThan(0.02);
    expect(late.model).toMatch(/2025/);
  });

  it('adds an easterly declination to a compass bearing and takes a westerly one off', () => {
    expect(magneticToTrueDeg(350, 15)).toBe(5);
    expect(magneticToTrueDeg(10, -16)).toBe(354);
  });
});
