import { expect, test } from 'vitest';
import { civilYear, dayOfInstant } from '../../src/sun/civil-year.ts';
import {
  WEIGHT_BEAM_GROWING,
  WEIGHT_BEAM_RESTING,
  WEIGHT_GROWING_HOURS,
  WEIGHT_HOURS,
  WEIGHT_STRIDE,
  yearQuadrature,
} from '../../src/sun/year-quadrature.ts';
import { yearSamples } from '../../src/sun/year-samples.ts';

const SKY = {
  sunshineShareByMonth: new Float32Array(12).fill(0.4),
  hourly: null,
  diffuseSky: 'isotropic',
} as const;

test('days begin at midnight of the zone, also where its clocks change', () => {
  const halifax = civilYear(2027, 'America/Halifax');
  expect(halifax.dayStartMs[0]).toBe(Date.UTC(2027, 0, 1, 4));
  // Summer time from 14 March 2027.
  expect(halifax.dayStartMs[73]).toBe(Date.UTC(2027, 2, 15, 3));
  expect(halifax.dayStartMs[365]).toBe(Date.UTC(2028, 0, 1, 4));
  expect(Array.from(halifax.daysInMonth)).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
  expect(civilYear(2028, 'Pacific/Auckland').monthOfDay).toHaveLength(366);
});

test('an instant falls on its civil day, and outside the year on the nearest', () => {
  const year = civilYear(2027, 'Pacific/Auckland');
  expect(dayOfInstant(year, Date.UTC(2027, 5, 30, 11, 59))).toBe(180);
  expect(dayOfInstant(year, Date.UTC(2027, 5, 30, 12, 1))).toBe(181);
  expect(dayOfInstant(year, Date.UTC(2020, 0, 1))).toBe(0);
  expect(dayOfInstant(year, Date.UTC(2035, 0, 1))).toBe(364);
});

test('a time zone nobody knows is named in the refusal', () => {
  expect(() => civilYear(2027, 'Mars/Olympus')).toThrow(/"Mars\/Olympus"; expected an IANA name/);
});

test.each([
  [45.1, -64.5, 'America/Halifax'],
  [-43.6, 171.9, 'Pacific/Auckland'],
  [68, 20, 'Europe/Stockholm'],
])(
  'at %d, %d the directions carry the hours and photons of every month exactly',
  (latDeg, lonDeg, timeZone) => {
    const samples = yearSamples(2027, timeZone, latDeg, lonDeg, SKY);
    const growing = Uint8Array.from({ length: 365 }, (_, d) => Number(d >= 100 && d < 250));
    const phases = Uint8Array.from({ length: 365 }, (_, d) => d % 7);
    const quadrature = yearQuadrature(samples, latDeg, phases, growing);
    const sums = new Float64Array(WEIGHT_STRIDE);
    quadrature.partWeights.forEach((w, i) => {
      sums[i % WEIGHT_STRIDE] += w;
    });
    const expected = new Float64Array(WEIGHT_STRIDE);
    for (let i = 0; i < samples.count; i++) {
      const day = samples.day[i];
      const month = samples.civil.monthOfDay[day];
      expected[WEIGHT_HOURS + month] += samples.hours[i];
      expected[(growing[day] ? WEIGHT_BEAM_GROWING : WEIGHT_BEAM_RESTING) + month] += samples.beamMol[i];
      if (growing[day]) expected[WEIGHT_GROWING_HOURS] += samples.hours[i];
    }
    expected.forEach((value, slot) => {
      expect(sums[slot]).toBeCloseTo(value, 6);
    });
    for (const altitude of quadrature.altitudeRad) expect(altitude).toBeGreaterThan(0);
    expect(quadrature.count).toBeGreaterThan(800);
    expect(quadrature.count).toBeLessThan(1700);
  },
);

test('measured hours of radiation are kept whole, beam where the sun is up at the half-hour', () => {
  const midHourMs = Float64Array.of(Date.UTC(2027, 5, 1, 12, 30), Date.UTC(2027, 5, 1, 0, 30));
  const hourly = {
    midHourMs,
    globalWm2: Float32Array.of(800, 10),
    diffuseWm2: Float32Array.of(200, 0),
  };
  const samples = yearSamples(2027, 'UTC', 50, 0, { ...SKY, hourly });
  const beam = samples.beamMol.reduce((a, b) => a + b, 0);
  const diffuse = samples.diffuseMolByDay.reduce((a, b) => a + b, 0);
  expect(beam).toBeCloseTo(600 * 0.0036 * 2.06, 6);
  expect(diffuse).toBeCloseTo(210 * 0.0036 * 2.06, 6);
});
