/** The plain year: every ten minutes on its own, straight from suncalc and the printed formulas. Shares no code with src. */
import { getPosition } from 'suncalc';
import type { LightScene } from '../../src/light/light-types.ts';

const RAD = Math.PI / 180;

interface Moment {
  readonly day: number;
  readonly month: number;
  readonly growing: boolean;
  readonly altitudeRad: number;
  readonly azimuthRad: number;
  readonly hours: number;
  readonly beamMol: number;
}
export interface PlainYear {
  readonly moments: readonly Moment[];
  readonly monthOfDay: readonly number[];
  readonly diffuseMolByDay: Float64Array;
}

/** Airless altitude and azimuth, radians: Bennett's refraction taken off (within 0.002 degrees above the horizon). */
function sunAt(utcMs: number, latDeg: number, lonDeg: number): { alt: number; az: number } {
  const { altitude, azimuth } = getPosition(new Date(utcMs), latDeg, lonDeg);
  // suncalc adds 0.484 degrees at and below the horizon; above it the inverse is searched by halving.
  const added = (h: number) => {
    const r = Math.max(0, h) * RAD;
    return 0.0002967 / Math.tan(r + 0.00312536 / (r + 0.08901179)) / RAD;
  };
  let low = altitude - 1;
  let high = altitude;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (middle + added(middle) < altitude) low = middle;
    else high = middle;
  }
  return { alt: low * RAD, az: azimuth * RAD };
}

export function plainYear(scene: LightScene, stepMinutes = 10): PlainYear {
  const { latDeg, lonDeg, calendarYear, timeZone, sky } = scene;
  const clock = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const dayZero = Date.UTC(calendarYear, 0, 1);
  const days = (Date.UTC(calendarYear + 1, 0, 1) - dayZero) / 86_400_000;
  const monthOfDay = Array.from({ length: days }, (_, d) => new Date(dayZero + d * 86_400_000).getUTCMonth());
  const diffuseMolByDay = new Float64Array(days);
  const stepMs = stepMinutes * 60_000;
  const moments: (Moment & { beamMol: number })[] = [];
  // Dates are asked of the clock once an hour's quarter, which no zone's midnight cuts.
  for (
    let quarter = dayZero - 86_400_000;
    quarter < dayZero + (days + 1) * 86_400_000;
    quarter += 1_800_000
  ) {
    let day = -1;
    for (let t = quarter + stepMs / 2; t < quarter + 1_800_000; t += stepMs) {
      const { alt, az } = sunAt(t, latDeg, lonDeg);
      if (alt <= 0) continue;
      if (day < 0) day = (Date.parse(`${clock.format(quarter)}T00:00Z`) - dayZero) / 86_400_000;
      if (day < 0 || day >= days) break;
      moments.push({
        day,
        month: monthOfDay[day],
        growing: scene.growingDay[day] === 1,
        altitudeRad: alt,
        azimuthRad: az,
        hours: stepMinutes / 60,
        beamMol: 0,
      });
    }
  }
  if (sky.hourly) {
    const { midHourMs, globalWm2, diffuseWm2 } = sky.hourly;
    midHourMs.forEach((t, i) => {
      const { alt, az } = sunAt(t, latDeg, lonDeg);
      const day = (Date.parse(`${clock.format(t)}T00:00Z`) - dayZero) / 86_400_000;
      const mol = (w: number) => (w * 3600 * 2.06) / 1e6;
      if (!(globalWm2[i] > 0)) return;
      const beam = alt > 0 ? Math.max(0, globalWm2[i] - diffuseWm2[i]) : 0;
      diffuseMolByDay[day] += mol(globalWm2[i] - beam);
      if (beam > 0)
        moments.push({
          day,
          month: monthOfDay[day],
          growing: scene.growingDay[day] === 1,
          altitudeRad: alt,
          azimuthRad: az,
          hours: 0,
          beamMol: mol(beam),
        });
    });
  } else {
    const sines = new Float64Array(days);
    for (const m of moments) sines[m.day] += Math.sin(m.altitudeRad);
    const kd = 0.9511 - 0.1604 * 0.75 + 4.388 * 0.75 ** 2 - 16.638 * 0.75 ** 3 + 12.336 * 0.75 ** 4;
    const beamByDay = new Float64Array(days);
    for (let d = 0; d < days; d++) {
      const b = (2 * Math.PI * (d + 1)) / 365;
      const decl = 0.409 * Math.sin(b - 1.39);
      const phi = latDeg * RAD;
      const ws = Math.acos(Math.max(-1, Math.min(1, -Math.tan(phi) * Math.tan(decl))));
      const ra =
        (1440 / Math.PI) *
        0.082 *
        (1 + 0.033 * Math.cos(b)) *
        (ws * Math.sin(phi) * Math.sin(decl) + Math.cos(phi) * Math.cos(decl) * Math.sin(ws));
      const n = sky.sunshineShareByMonth[monthOfDay[d]];
      beamByDay[d] = 2.06 * n * 0.75 * ra * (1 - kd);
      diffuseMolByDay[d] = 2.06 * (n * 0.75 * ra * kd + (1 - n) * 0.25 * ra);
    }
    for (const m of moments) m.beamMol = (beamByDay[m.day] * Math.sin(m.altitudeRad)) / sines[m.day];
  }
  return { moments, monthOfDay, diffuseMolByDay };
}
