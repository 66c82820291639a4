import { expect, test } from 'vitest';
import { sunDay } from '../../../src/sun/sun-day.ts';
import { yearSamples } from '../../../src/sun/year-samples.ts';
import { degToRad } from '../../../src/units/angle.ts';

// Hours of sun in 2026 at longitude 0, sun's centre, airless, counted in 5-minute steps with two independent
// ephemerides (computed for this project). Columns: latitude; open ground; wall due south at profile angle 15, 30,
// 45; wall due north at 15, 30, 45; ring horizon at 10, 20, 30 degrees. Tolerance 2 h.
const HOURS = [
  [60, 4417.2, 3565.3, 2951.7, 2330.0, 4092.8, 3923.2, 3803.8, 3075.6, 2084.3, 1311.2],
  [45, 4400.8, 4092.8, 3241.1, 2627.4, 4231.2, 4111.8, 4008.7, 3635.9, 2782.8, 1858.5],
  [-43, 4360.2, 4209.3, 4100.7, 4001.8, 4070.8, 3209.7, 2566.9, 3627.3, 2827.1, 1875.3],
] as const;
const SKY = { sunshineShareByMonth: new Float32Array(12), hourly: null, diffuseSky: 'isotropic' } as const;

test.each(HOURS)(
  'a year at latitude %d has the published hours of sun on open ground, behind walls and in rings',
  (...row) => {
    const [latDeg, ...expected] = row;
    const samples = yearSamples(2026, 'UTC', latDeg, 0, SKY);
    const hoursWhere = (open: (altitude: number, azimuth: number) => boolean) => {
      let hours = 0;
      for (let i = 0; i < samples.count; i++)
        if (open(samples.altitudeRad[i], samples.azimuthRad[i])) hours += samples.hours[i];
      return hours;
    };
    const behindWall = (wallAzimuthDeg: number, profileDeg: number) =>
      hoursWhere((altitude, azimuth) => {
        const ahead = Math.cos(azimuth - degToRad(wallAzimuthDeg));
        return ahead <= 0 || Math.atan(Math.tan(altitude) / ahead) >= degToRad(profileDeg);
      });
    const found = [
      hoursWhere(() => true),
      ...[15, 30, 45].map((profile) => behindWall(180, profile)),
      ...[15, 30, 45].map((profile) => behindWall(0, profile)),
      ...[10, 20, 30].map((ring) => hoursWhere((altitude) => altitude >= degToRad(ring))),
    ];
    expect(found).toHaveLength(expected.length);
    console.log(
      `latitude ${latDeg}: differences ${found.map((h, k) => (h - expected[k]).toFixed(1)).join(', ')} h`,
    );
    found.forEach((hours, k) => {
      expect(Math.abs(hours - expected[k]), `column ${k}`).toBeLessThan(2);
    });
  },
);

test.each([
  [60, 4520.8],
  [45, 4463.0],
  [-43, 4420.8],
])('from rise to set of its upper rim the sun is up in 2026 at latitude %d for %f h', (latDeg, published) => {
  // The same count with the centre 0.833 degrees below the airless horizon.
  let hours = 0;
  for (let day = 0; day < 365; day++) {
    const date = new Date(Date.UTC(2026, 0, 1 + day));
    const sun = sunDay(2026, 'UTC', latDeg, 0, date.getUTCMonth(), date.getUTCDate(), degToRad(-0.833));
    hours += (sun.setMin! - sun.riseMin!) / 60;
  }
  expect(Math.abs(hours - published)).toBeLessThan(2);
});
