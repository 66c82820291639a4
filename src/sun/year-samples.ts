/**
 * The year as the sun and sky give it, in steps of five minutes: where the sun stood, for how long, and how much
 * photosynthetic light came from it and from the rest of the sky. Nothing here knows of a scene.
 */
import { degToRad } from '../units/angle.ts';
import { BadInputError } from '../units/bad-input.ts';
import { type CivilYear, civilYear, dayOfInstant } from './civil-year.ts';
import { CLEAR_SKY_SHARE, extraterrestrialMJ, OVERCAST_SKY_SHARE } from './daily-radiation.ts';
import { diffuseShare } from './diffuse-share.ts';
import { PHOTONS_MOL_PER_MJ } from './photons.ts';
import { sunPosition } from './position.ts';
import type { HourlyRadiation, SkyClimate } from './sky-climate.ts';

const STEP_MS = 300_000;

export interface YearSamples {
  readonly civil: CivilYear;
  /** Moments with the sun's centre above the airless horizon. All the arrays below have this length. */
  readonly count: number;
  readonly day: Uint16Array;
  readonly altitudeRad: Float64Array;
  /** Clockwise from true north. */
  readonly azimuthRad: Float64Array;
  /** Length of time the moment stands for, hours. */
  readonly hours: Float64Array;
  /** Photons from the sun's disc on the horizontal in that time, mol m-2. */
  readonly beamMol: Float64Array;
  /** Photons from the sky without the sun's disc on the horizontal, mol m-2, one value a civil day. */
  readonly diffuseMolByDay: Float64Array;
}

/**
 * Every day of the calendar year in the middles of five-minute steps.
 *
 * With hourly radiation, beam is global - diffuse with the sun at mid-hour; the samples that carry it carry no hours,
 * and where the sun is not up at mid-hour all of it is diffuse. Without, each day mixes a clear sky (0.75 of Ra, the
 * diffuse share by Erbs at that clearness) and an overcast one (0.25 of Ra, all diffuse) by the month's sunshine
 * share, spread over the day in proportion to the sine of the sun's altitude.
 */
export function yearSamples(
  calendarYear: number,
  timeZone: string,
  latDeg: number,
  lonDeg: number,
  sky: SkyClimate,
): YearSamples {
  const civil = civilYear(calendarYear, timeZone);
  const days = civil.monthOfDay.length;
  const startMs = civil.dayStartMs[0];
  const steps = Math.round((civil.dayStartMs[days] - startMs) / STEP_MS);
  const capacity = steps + (sky.hourly?.midHourMs.length ?? 0);
  const day = new Uint16Array(capacity);
  const altitudeRad = new Float64Array(capacity);
  const azimuthRad = new Float64Array(capacity);
  const hours = new Float64Array(capacity);
  const beamMol = new Float64Array(capacity);
  const diffuseMolByDay = new Float64Array(days);
  let count = 0;
  for (let step = 0; step < steps; step++) {
    const utcMs = startMs + (step + 0.5) * STEP_MS;
    const sun = sunPosition(utcMs, latDeg, lonDeg);
    if (sun.altitudeRad <= 0) continue;
    day[count] = dayOfInstant(civil, utcMs);
    altitudeRad[count] = sun.altitudeRad;
    azimuthRad[count] = sun.azimuthRad;
    hours[count] = STEP_MS / 3_600_000;
    count++;
  }
  if (sky.hourly) addHourly(sky.hourly);
  else addSunshine(sky.sunshineShareByMonth);

  function addSunshine(shareByMonth: Float32Array): void {
    const sineSum = new Float64Array(days);
    for (let i = 0; i < count; i++) sineSum[day[i]] += Math.sin(altitudeRad[i]);
    const beamByDay = new Float64Array(days);
    const clearDiffuse = diffuseShare(CLEAR_SKY_SHARE);
    for (let d = 0; d < days; d++) {
      const ra = extraterrestrialMJ(degToRad(latDeg), d + 1) * PHOTONS_MOL_PER_MJ;
      const sunshine = shareByMonth[civil.monthOfDay[d]];
      const clear = sunshine * CLEAR_SKY_SHARE * ra;
      const overcast = (1 - sunshine) * OVERCAST_SKY_SHARE * ra;
      beamByDay[d] = sineSum[d] > 0 ? clear * (1 - clearDiffuse) : 0;
      diffuseMolByDay[d] = clear + overcast - beamByDay[d];
    }
    for (let i = 0; i < count; i++)
      beamMol[i] = (beamByDay[day[i]] * Math.sin(altitudeRad[i])) / sineSum[day[i]];
  }

  function addHourly(hourly: HourlyRadiation): void {
    const records = hourly.midHourMs.length;
    if (hourly.globalWm2.length !== records || hourly.diffuseWm2.length !== records)
      throw new BadInputError(
        `Hourly radiation has ${records} hours, ${hourly.globalWm2.length} global and ${hourly.diffuseWm2.length} diffuse values; expected the same number of each.`,
      );
    const molPerWm2Hour = 0.0036 * PHOTONS_MOL_PER_MJ;
    for (let i = 0; i < records; i++) {
      const global = hourly.globalWm2[i] * molPerWm2Hour;
      if (!(global > 0)) continue;
      const diffuse = Math.min(global, Math.max(0, hourly.diffuseWm2[i] * molPerWm2Hour));
      const d = dayOfInstant(civil, hourly.midHourMs[i]);
      const sun = sunPosition(hourly.midHourMs[i], latDeg, lonDeg);
      const up = sun.altitudeRad > 0;
      diffuseMolByDay[d] += up ? diffuse : global;
      if (!up || diffuse === global) continue;
      day[count] = d;
      altitudeRad[count] = sun.altitudeRad;
      azimuthRad[count] = sun.azimuthRad;
      beamMol[count] = global - diffuse;
      count++;
    }
  }

  return {
    civil,
    count,
    day: day.subarray(0, count),
    altitudeRad: altitudeRad.subarray(0, count),
    azimuthRad: azimuthRad.subarray(0, count),
    hours: hours.subarray(0, count),
    beamMol: beamMol.subarray(0, count),
    diffuseMolByDay,
  };
}
