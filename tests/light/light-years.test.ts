import { describe, expect, test } from 'vitest';
import { computeLight } from '../../src/light/compute-light.ts';
import type { LightResult, YearLight } from '../../src/light/light-types.ts';
import { computeLightYears } from '../../src/light/light-years.ts';
import { cellCount } from '../../src/numeric/grid.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { lightScene } from '../../src/scene/build-scene.ts';
import { lightYears } from '../../src/scene/build-years.ts';
import { siteGrid } from '../../src/scene/site-grid.ts';
import { gridOf, rollingLand } from '../reference/plain-horizon.ts';
import { line, northWind, optionsOf, tree } from '../years/years-site.ts';

const trees = Array.from({ length: 24 }, (_, i) =>
  tree(`t${i}`, [((i % 6) - 2.5) * 8, (Math.floor(i / 6) - 1.5) * 8], {
    species: ['Juglans regia', 'Malus domestica', 'Picea abies'][i % 3],
    plantedYear: 2020 + (i % 9),
  }),
);
const document = northWind([
  ...trees,
  line('belt', 25, { kind: 'belt', species: 'Alnus cordata', plantedYear: 2024 }, 30),
  line('wall', -22, { kind: 'wall', heightM: 3 }, 12),
]);
const options = optionsOf(document);
const grid = siteGrid(document, options.frame, { cellM: 2, layout: null });
const YEARS = [0, 6, 20, 40];
const { scene, years } = lightYears(
  document,
  YEARS.map((year) => ({ ...options, year })),
);
const found = runToEnd(computeLightYears({ scene, years, grid, readingHeightM: 0.1 }));

const cells = cellCount(grid);
const seasonOf = ({ lightShare }: LightResult) => lightShare.subarray(12 * cells);
const hoursOf = (hours: Float32Array) =>
  Float32Array.from({ length: cells }, (_, cell) => {
    let sum = 0;
    for (let month = 0; month < 12; month++) sum += hours[month * cells + cell];
    return sum;
  });
/** Mean and 99th percentile of the differences of two maps. */
function apart(a: Float32Array, b: Float32Array, unit = 1): { mean: number; p99: number } {
  const all = Array.from(a, (value, i) => Math.abs(value - b[i]) / unit).sort((x, y) => x - y);
  return { mean: all.reduce((sum, x) => sum + x, 0) / cells, p99: all[Math.floor(0.99 * cells)] };
}

describe('light over many years', () => {
  test('each year is the usual engine’s year of it, within what fewer rays cost', () => {
    YEARS.forEach((year, k) => {
      const usual = runToEnd(
        computeLight({
          scene: lightScene(document, { ...options, year }).scene,
          grid,
          readingHeightM: 0.1,
        }),
      );
      const openHours = hoursOf(usual.openHours)[0];
      const share = apart(found[k].lightShare, seasonOf(usual));
      const hours = apart(found[k].directHours, hoursOf(usual.directHours), openHours);
      console.log(
        `year ${year}: share of light off by ${share.mean.toFixed(4)} in the mean, ${share.p99.toFixed(4)} at the 99th percentile; hours ${hours.mean.toFixed(4)}, ${hours.p99.toFixed(4)}`,
      );
      expect(share.mean).toBeLessThan(0.004);
      expect(share.p99).toBeLessThan(0.015);
      expect(hours.mean).toBeLessThan(0.004);
      expect(hours.p99).toBeLessThan(0.015);
      const band = (values: Float32Array, month: number) =>
        values.subarray(month * cells, (month + 1) * cells);
      const midwinter = apart(found[k].midwinterShare, band(usual.lightShare, 11));
      expect(midwinter.mean).toBeLessThan(0.02);
      const midwinterHours = apart(
        found[k].midwinterHours,
        band(usual.directHours, 11),
        band(usual.openHours, 11)[0],
      );
      expect(midwinterHours.mean).toBeLessThan(0.02);
      // The growing season is April to September.
      const season = (hours: Float32Array) =>
        Float32Array.from({ length: cells }, (_, cell) =>
          [3, 4, 5, 6, 7, 8].reduce((sum, month) => sum + hours[month * cells + cell], 0),
        );
      const seasonHours = apart(found[k].seasonHours, season(usual.directHours), season(usual.openHours)[0]);
      expect(seasonHours.mean).toBeLessThan(0.004);
    });
  });

  test('the coarse one has the usual engine’s means over a field on hilly land', () => {
    const halfM = 300;
    const ground = gridOf((2 * halfM) / 6, (2 * halfM) / 6, 6, rollingLand(8));
    const hilly = { ...options, ground };
    const wide = siteGrid(document, options.frame, { cellM: 4, layout: null });
    const [stand] = lightYears(document, [hilly]).years;
    const land = lightYears(document, [hilly]).scene;
    const [coarse] = runToEnd(
      computeLightYears({ scene: land, years: [stand], grid: wide, readingHeightM: 0.1, coarse: true }),
    );
    const usual = runToEnd(
      computeLight({ scene: lightScene(document, hilly).scene, grid: wide, readingHeightM: 0.1 }),
    );
    const count = cellCount(wide);
    const mean = (values: ArrayLike<number>, first = 0) =>
      Array.from({ length: count }, (_, cell) => values[first + cell]).reduce((sum, x) => sum + x, 0) / count;
    const year = (hours: Float32Array) =>
      Array.from({ length: 12 }, (_, month) => mean(hours, month * count)).reduce((sum, x) => sum + x, 0);
    const openHours = year(usual.openHours);
    const hoursOff = Math.abs(mean(coarse.directHours) - year(usual.directHours)) / openHours;
    const shareOff = Math.abs(mean(coarse.lightShare) - mean(usual.lightShare, 12 * count));
    const winterOff =
      Math.abs(mean(coarse.midwinterHours) - mean(usual.directHours, 11 * count)) /
      mean(usual.openHours, 11 * count);
    console.log(
      `means of a field on hilly land: share off by ${shareOff.toFixed(4)}, hours by ${hoursOff.toFixed(4)} of open hours, midwinter by ${winterOff.toFixed(4)}`,
    );
    // The land takes a good part of it, so that its horizon counts.
    expect(year(usual.directHours)).toBeLessThan(0.9 * openHours);
    expect(shareOff).toBeLessThan(0.002);
    expect(hoursOff).toBeLessThan(0.002);
    expect(winterOff).toBeLessThan(0.008);
  });

  test('a year is the same whatever other years are asked for with it, and on whichever rows', () => {
    const alone = runToEnd(
      computeLightYears({ scene, years: [years[2]], grid, readingHeightM: 0.1, rows: { first: 1, step: 3 } }),
    )[0];
    const pick = (values: Float32Array) =>
      Array.from({ length: grid.rows }, (_, row) => row)
        .filter((row) => row % 3 === 1)
        .flatMap((row) => [...values.subarray(row * grid.columns, (row + 1) * grid.columns)]);
    const same = (figure: keyof YearLight) =>
      pick(found[2][figure]).forEach((value, i) => {
        expect(alone[figure][i]).toBe(value);
      });
    same('lightShare');
    same('directHours');
  });

  test('a year without anything is open light', () => {
    const bare = {
      ...years[0],
      crowns: { ...years[0].crowns, count: 0 },
      prisms: { ...years[0].prisms, count: 0 },
    };
    const [open] = runToEnd(computeLightYears({ scene, years: [bare], grid, readingHeightM: 0.1 }));
    for (const share of open.lightShare) expect(share).toBeCloseTo(1, 6);
  });
});
