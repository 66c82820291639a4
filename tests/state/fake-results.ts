import type { LightResult } from '../../src/light/light-types.ts';
import type { GridSpec } from '../../src/numeric/grid.ts';
import type { ShelterResult } from '../../src/wind/shelter-types.ts';
import type { YearsLook } from '../../src/years/years-look-types.ts';

/** Two cells of 20 m beside each other: the western one has these values, the eastern one half of them. */
const TWO_CELLS: GridSpec = { columns: 2, rows: 1, cellM: 20, westM: 0, northM: 20 };

const bands = (count: number, value: (band: number) => number): Float32Array => {
  const values = new Float32Array(count * 2);
  for (let band = 0; band < count; band++) {
    values[band * 2] = value(band);
    values[band * 2 + 1] = value(band) / 2;
  }
  return values;
};

/** January has 31 hours of direct sun, every other month 300; the season's share of light is 0.8. */
export const fakeLight = (): LightResult => ({
  grid: TWO_CELLS,
  directHours: bands(12, (month) => (month === 0 ? 31 : 300)),
  openHours: bands(12, () => 310),
  lightShare: bands(13, (band) => (band === 12 ? 0.8 : 0.6)),
  dailyLightIntegral: bands(12, (month) => (month === 0 ? 5 : 30)),
  openDailyLightIntegral: new Float32Array(12).fill(40),
  growingDaysByMonth: Float32Array.from([0, 0, 0, 30, 31, 30, 31, 31, 30, 0, 0, 0]),
  directions: 100,
  quadratureError: { mean: 0.001, p99: 0.01 },
});

/** Share of open wind: growing season 0.5, rest 0.6, year 0.55; half of it in the eastern cell. */
export const fakeShelter = (): ShelterResult => ({
  grid: TWO_CELLS,
  windShare: bands(3, (band) => [0.5, 0.6, 0.55][band]),
  galeHours: bands(3, () => 10),
  directions: 80,
});

/** All years: a tenth of the field comes into shelter every two years, light goes down from open by a hundredth a year. */
export const fakeYears = (years = Array.from({ length: 41 }, (_, year) => year)): YearsLook => ({
  fieldId: 'field-1',
  fieldName: 'Long Meadow',
  grid: TWO_CELLS,
  years,
  figures: years.map((year) => ({
    shelteredShare: Math.min(1, year / 20),
    meanWindCut: Math.min(0.5, year / 40),
    meanLightShare: 1 - year / 100,
    meanDirectHours: 2000 - 10 * year,
    canopyShare: year / 100,
  })),
  maps: new Map(
    years.map((year) => [
      year,
      {
        lightShare: Float32Array.from([1 - year / 100, 1 - year / 200]),
        directHours: Float32Array.from([3652.5 - 36.525 * year, 3652.5]),
        windShare: Float32Array.from([1 - year / 100, 1]),
      },
    ]),
  ),
  crops: {
    trees: 2,
    bearing: {
      slow: years.map((year) => (year >= 12 ? 1 : 0)),
      usual: years.map((year) => (year >= 8 ? 1 : 0)),
      fast: years.map((year) => (year >= 6 ? 1 : 0)),
    },
    species: [
      { speciesName: 'Hazel', trees: 1, firstYear: { slow: 12, usual: 8, fast: 6 } },
      { speciesName: 'Walnut', trees: 1, firstYear: { slow: null, usual: null, fast: null } },
    ],
  },
  band: null,
});
