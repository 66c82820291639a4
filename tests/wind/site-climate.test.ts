import { describe, expect, it } from 'vitest';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { restsWords } from '../../src/wind/rests-words.ts';
import { shelterDirections } from '../../src/wind/shelter-directions.ts';
import { siteClimate } from '../../src/wind/site-climate.ts';
import { bytesOf, plainHour, tmy3 } from '../weather/weather-files.ts';
import { growingDay } from './shelter-scenes.ts';

const sectors = [{ fromDeg: 270, frequency: 1, meanSpeedMps: 5, weibullK: 2 }];
const weather = readWeatherFile(bytesOf(tmy3()), 'station.csv');
const meanOf = (wind: Parameters<typeof siteClimate>[0], file = null as typeof weather | null) => {
  const { climate } = siteClimate(wind, file, growingDay);
  return climate.growing.sectors.reduce((sum, each) => sum + each.frequency * each.meanSpeedMps, 0);
};
/** By hand: up the profile of one land to 60 m, down that of the other to 10 m. */
const OPEN_TO_ROUGH =
  (Math.log(60 / 0.03) / Math.log(10 / 0.03)) * (Math.log(10 / 0.25) / Math.log(60 / 0.25));

describe('the wind moved to the site', () => {
  it('goes from its height to 10 m over the same land by the plain log profile', () => {
    const factor = Math.log(10 / 0.03) / Math.log(2 / 0.03);
    expect(meanOf({ heightM: 2, sectors })).toBeCloseTo(5 * factor, 9);
    expect(meanOf({ heightM: 10, sectors })).toBeCloseTo(5, 12);
  });
  it('goes from open land to land with hedges and scattered trees through 60 m', () => {
    expect(OPEN_TO_ROUGH).toBeCloseTo(0.881, 3);
    expect(meanOf({ heightM: 10, measuredRoughnessM: 0.03, siteRoughnessM: 0.25, sectors })).toBeCloseTo(
      5 * OPEN_TO_ROUGH,
      9,
    );
    expect(meanOf({ siteRoughnessM: 0.25 }, weather)).toBeCloseTo(4 * OPEN_TO_ROUGH, 5);
  });
  it('reaches the engine’s gales and leaves directions, calms and shapes alone', () => {
    const gale = (siteRoughnessM: number) => {
      const { climate } = siteClimate(
        { heightM: 10, calmShare: 0.1, measuredRoughnessM: 0.03, siteRoughnessM, sectors },
        null,
        growingDay,
      );
      expect(climate.heightM).toBe(10);
      expect(climate.growing.calmShare).toBe(0.1);
      expect(climate.growing.sectors[0]).toMatchObject({ fromDeg: 270, frequency: 0.9, weibullK: 2 });
      const [west] = shelterDirections(climate, 0, 10.8);
      return west.growing!.galeShare[1024];
    };
    // exp(-(pi/4)(v/mean)^2) for k = 2.
    expect(gale(0.03)).toBeCloseTo(Math.exp(-(Math.PI / 4) * (10.8 / 5) ** 2), 6);
    expect(gale(0.25)).toBeCloseTo(Math.exp(-(Math.PI / 4) * (10.8 / 5 / OPEN_TO_ROUGH) ** 2), 6);
  });
  it('says which lands it took for granted, and nothing where both are given', () => {
    const assumed = (wind: object) =>
      siteClimate({ heightM: 10, sectors, ...wind }, null, growingDay).assumed;
    expect(assumed({})).toEqual([
      'wind: measured over open land of roughness 0.03 m',
      'wind: the site’s land as rough as where it was measured',
    ]);
    expect(assumed({ measuredRoughnessM: 0.1, siteRoughnessM: 0.25 })).toEqual([]);
  });
  it('does not move what was said in words or drawn: that is the wind of the site', () => {
    for (const origin of ['words', 'drawn'] as const) {
      const { climate, assumed, rests } = siteClimate(
        { heightM: 10, origin, siteRoughnessM: 1, sectors },
        null,
        growingDay,
      );
      expect(climate.growing.sectors[0].meanSpeedMps).toBe(5);
      expect(assumed).toEqual([]);
      expect(rests).toMatchObject({ on: origin, measured: null, factor: 1 });
    }
  });
  it('takes the seasons’ own calms', () => {
    const { climate } = siteClimate(
      { heightM: 10, calmShare: 0.5, calmShareBySeason: { growing: 0.2 }, sectors },
      null,
      growingDay,
    );
    expect([climate.growing.calmShare, climate.rest.calmShare]).toEqual([0.2, 0.5]);
    expect(climate.growing.sectors[0].frequency).toBeCloseTo(0.8, 12);
  });
  it('takes the file’s directions where the record has only lands, and its height wins', () => {
    const { rests } = siteClimate({ heightM: 6, siteRoughnessM: 0.5 }, weather, growingDay);
    expect(rests.measured).toEqual({ heightM: 6, roughnessM: 0.03 });
    expect(rests.hours).toEqual({
      hours: 8760,
      withoutSpeed: 0,
      withoutDirection: 0,
      strong: 0,
      emptyMonths: [],
    });
    expect(restsWords(rests, 'station.csv').join(' ')).toMatch(
      /8,760 hours of station\.csv.*Measured 6 m above open farmland.*moved to 10 m above orchards.*times/,
    );
  });
  it('says how many hours are missing and which months', () => {
    const gappy = readWeatherFile(
      bytesOf(
        tmy3((hour) => ({
          ...plainHour(hour),
          speed: hour.month === 2 || hour.index === 5000 ? '' : 4,
          from: hour.index === 6000 ? '' : 90,
        })),
      ),
      'station.csv',
    );
    const { assumed } = siteClimate(null, gappy, growingDay);
    expect(assumed.slice(0, 3)).toEqual([
      'wind: 673 of 8760 hours have no speed and are left out',
      'wind: 1 windy hours without a direction are shared out over all directions',
      'wind: no hours in February; what the file has stands for its season',
    ]);
  });
  it('refuses a measuring height within the roughness', () => {
    expect(() => meanOf({ heightM: 0.4, measuredRoughnessM: 0.5, sectors })).toThrow(BadInputError);
  });
});
