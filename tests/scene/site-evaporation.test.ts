import { describe, expect, it } from 'vitest';
import { lookUp } from '../../src/numeric/even-table.ts';
import { siteEvaporation } from '../../src/scene/site-evaporation.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import { newSite } from '../../src/site/new-site.ts';
import { evaporationMm, windTerms } from '../../src/sun/penman-monteith.ts';
import { dewPointC, saturationKPa } from '../../src/sun/vapour.ts';
import { type WeatherHour, weatherTable } from '../../src/sun/weather/weather-table.ts';
import { speedAt2mOverGrass } from '../../src/wind/profile.ts';
import type { WindClimate } from '../../src/wind/shelter-types.ts';

const HOURS = Array.from({ length: 8760 }, (_, index) => {
  const day = new Date(Date.UTC(2023, 0, 1 + Math.floor(index / 24)));
  return { month: day.getUTCMonth() + 1, day: day.getUTCDate(), hourEnd: (index % 24) + 1 };
});

/** A year of equal days: 10 degrees by night, 20 by day, an even sun of `globalWm2` for twelve hours. */
const hoursOf = (
  humidityPercent: number | null,
  globalWm2 = 350,
  gap: (index: number) => boolean = () => false,
): WeatherHour[] =>
  HOURS.map((hour, index): WeatherHour => {
    const light = hour.hourEnd > 6 && hour.hourEnd <= 18;
    return {
      ...hour,
      globalWm2: light ? globalWm2 : 0,
      diffuseWm2: 0,
      windFromDeg: 200,
      windSpeedMps: gap(index) ? Number.NaN : 4,
      temperatureC: light ? 20 : 10,
      ...(humidityPercent === null ? {} : { dewPointC: dewPointC(10, humidityPercent) }),
    };
  });
const tableOf = (hours: readonly WeatherHour[]) =>
  weatherTable({ format: 'EPW', place: '', latDeg: 45, lonDeg: -64, utcOffsetHours: -4 }, hours);
const year = (...args: Parameters<typeof hoursOf>) => tableOf(hoursOf(...args));
const blowing = (meanSpeedMps: number): WindClimate => {
  const season = { calmShare: 0, sectors: [{ fromDeg: 200, frequency: 1, meanSpeedMps, weibullK: 2 }] };
  return { heightM: 10, growing: season, rest: season };
};
const north = newSite([-64.5, 45.1], 'North', 2027);
const south = newSite([171.9, -43.6], 'South', 2027);
const asked = (document: typeof north, weather: ReturnType<typeof year> | null, climate = blowing(4)) => {
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  return siteEvaporation(document, { frame, ground, weather, year: 0 }, climate);
};
const curveOf = (...args: Parameters<typeof asked>) => {
  const { curve, missing } = asked(...args);
  if (!curve) throw new Error(missing);
  return curve;
};

describe('evaporation of a site', () => {
  it('is the sum of FAO-56 over the days of the growing season, with the open wind moved to 2 m', () => {
    const { seasonMm, days, openMps } = curveOf(north, year(70));
    expect(days).toBe(183);
    expect(openMps).toBeCloseTo(speedAt2mOverGrass(4, 10), 9);
    let sum = 0;
    for (let dayOfYear = 91; dayOfYear <= 273; dayOfYear++) {
      const day = {
        dayOfYear,
        leastC: 10,
        mostC: 20,
        vapourKPa: 0.7 * saturationKPa(10),
        globalMJ: (350 * 12 * 3600) / 1e6,
      };
      sum += evaporationMm(windTerms(day, { latRad: (45.1 * Math.PI) / 180, elevationM: 0 }), openMps);
    }
    expect(lookUp(seasonMm, 1)).toBeCloseTo(sum, 0);
  });

  it('takes the wind of the map: twice the wind halved is the wind', () => {
    const once = curveOf(north, year(70));
    const twice = curveOf(north, year(70), blowing(8));
    expect(lookUp(twice.seasonMm, 0.5)).toBeCloseTo(lookUp(once.seasonMm, 1), 6);
  });

  it('falls with the wind in dry air, rises in humid air, and counts the days on which it rises', () => {
    const dry = curveOf(north, year(40));
    expect(lookUp(dry.seasonMm, 0.5)).toBeLessThan(lookUp(dry.seasonMm, 1) - 10);
    expect(dry.wrongWayDays).toBe(0);
    // The dew lies all night and stands at 19 degrees by day.
    const humid = curveOf(north, { ...year(100), dewPointC: new Float32Array(8760).fill(14) });
    expect(lookUp(humid.seasonMm, 0.5)).toBeGreaterThan(lookUp(humid.seasonMm, 1));
    expect(humid.wrongWayDays).toBe(183);
  });

  it('of several years is their mean', () => {
    const [dull, bright] = [hoursOf(70, 200), hoursOf(40, 400)];
    const joined = [
      ...dull.map((hour) => ({ ...hour, year: 2021 })),
      ...bright.map((hour) => ({ ...hour, year: 2022 })),
    ];
    const of = (hours: readonly WeatherHour[]) => {
      const { seasonMm, days } = curveOf(north, tableOf(hours));
      return [lookUp(seasonMm, 1), lookUp(seasonMm, 0.5), days];
    };
    const mean = of(dull).map((value, i) => (value + of(bright)[i]) / 2);
    for (const [i, value] of of(joined).entries()) expect(value).toBeCloseTo(mean[i], 6);
  });

  it('has the growing season of its own hemisphere', () => {
    expect(curveOf(south, year(70)).days).toBe(182);
  });

  it('spans a few days without wind, and says what is missing where there are many, or no humidity, or no file', () => {
    const whole = lookUp(curveOf(north, year(70)).seasonMm, 1);
    const gaps = curveOf(
      north,
      year(70, 350, (index) => Math.floor(index / 24) % 20 === 0),
    );
    expect(lookUp(gaps.seasonMm, 1)).toBeCloseTo(whole, -1);
    expect(
      asked(
        north,
        year(70, 350, (index) => Math.floor(index / 24) % 5 === 0),
      ).missing,
    ).toMatch(/nine days of ten.*on 14\d of 183/);
    expect(asked(north, year(null)).missing).toContain('on 0 of 183');
    expect(asked(north, null).missing).toContain('needs a weather file');
  });
});
