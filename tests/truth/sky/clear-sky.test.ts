import { expect, test } from 'vitest';
import { PHOTONS_MOL_PER_MJ } from '../../../src/sun/photons.ts';
import { sunPosition } from '../../../src/sun/position.ts';
import { yearSamples } from '../../../src/sun/year-samples.ts';
import { radToDeg } from '../../../src/units/angle.ts';
import { airMass, haurwitz, ineichen } from '../../reference/clear-sky.ts';

test('air mass follows Kasten & Young 1989', () => {
  // Test values of pvlib (zenith 80 and 89.9), the paper's own overhead and horizon, and computed ones.
  expect(airMass(10)).toBeCloseTo(5.586, 2);
  expect(airMass(0.1)).toBeCloseTo(36.467, 2);
  expect(airMass(90)).toBeCloseTo(0.9997, 4);
  expect(airMass(0)).toBeCloseTo(37.92, 2);
  expect(airMass(60)).toBeCloseTo(1.154, 3);
  expect(airMass(30)).toBeCloseTo(1.9943, 3);
  for (const [zenithDeg, mass] of [
    [70, 2.9031],
    [75, 3.8129],
    [85, 10.306],
    [88, 19.433],
  ])
    expect(Math.abs(airMass(90 - zenithDeg) / mass - 1)).toBeLessThan(1e-4);
});

test('clear global radiation follows Haurwitz 1945', () => {
  // Test values of pvlib, W m-2.
  for (const [altitudeDeg, wm2] of [
    [5, 48.6299],
    [10, 135.7417],
    [30, 487.8941],
    [50, 778.7667],
    [90, 1035.092],
  ])
    expect(haurwitz(altitudeDeg)).toBeCloseTo(wm2, 3);
});

test('clear beam and diffuse follow Ineichen & Perez 2002', () => {
  // Test value of pvlib: zenith 10, air mass 1, turbidity 3, sea level, 1364 W m-2.
  const sky = ineichen(80, 1, 3, 0, 1364);
  expect(sky.global).toBeCloseTo(1038.159219, 4);
  expect(sky.beam).toBeCloseTo(942.208186, 4);
  expect(sky.diffuse).toBeCloseTo(110.265293, 4);
});

test("a clear summer day's photons and their diffuse share lie near two independent clear skies", () => {
  const samples = yearSamples(2026, 'UTC', 45, 0, {
    sunshineShareByMonth: new Float32Array(12).fill(1),
    hourly: null,
    diffuseSky: 'isotropic',
  });
  const day = 171;
  const startMs = samples.civil.dayStartMs[day];
  let plainMJ = 0;
  let turbidMJ = 0;
  let turbidDiffuseMJ = 0;
  for (let minute = 2.5; minute < 1440; minute += 5) {
    const altitudeDeg = radToDeg(sunPosition(startMs + minute * 60_000, 45, 0).altitudeRad);
    if (altitudeDeg <= 0) continue;
    const sky = ineichen(altitudeDeg, airMass(altitudeDeg), 3, 0, 1321);
    plainMJ += haurwitz(altitudeDeg) * 3e-4;
    turbidMJ += sky.global * 3e-4;
    turbidDiffuseMJ += sky.diffuse * 3e-4;
  }
  let beamMol = 0;
  for (let i = 0; i < samples.count; i++) if (samples.day[i] === day) beamMol += samples.beamMol[i];
  const globalMJ = (beamMol + samples.diffuseMolByDay[day]) / PHOTONS_MOL_PER_MJ;
  console.log(
    `clear 21 June at 45 N: ours ${globalMJ.toFixed(1)} MJ, Haurwitz ${plainMJ.toFixed(1)}, Ineichen ${turbidMJ.toFixed(1)}`,
  );
  expect(Math.abs(globalMJ / plainMJ - 1)).toBeLessThan(0.06);
  expect(Math.abs(globalMJ / turbidMJ - 1)).toBeLessThan(0.06);
  const ourShare = samples.diffuseMolByDay[day] / (beamMol + samples.diffuseMolByDay[day]);
  expect(Math.abs(ourShare - turbidDiffuseMJ / turbidMJ)).toBeLessThan(0.06);
});
