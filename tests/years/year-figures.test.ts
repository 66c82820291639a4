import { describe, expect, test } from 'vitest';
import { toLocal } from '../../src/geo/frame.ts';
import { bearingTrees, bearsAt, bearsFrom } from '../../src/years/bearing.ts';
import { growingPlants, YEARS } from '../../src/years/growing-plants.ts';
import { canopyMask, yearFigures } from '../../src/years/year-figures.ts';
import { at, line, northWind, optionsOf, tree } from './years-site.ts';

describe('a year of a field in figures', () => {
  test('each is over the cells that count and have a value', () => {
    const maps = {
      lightShare: Float32Array.of(0.5, 0.7, Number.NaN, 0.1),
      directHours: Float32Array.of(1000, 2000, Number.NaN, 9),
      windShare: Float32Array.of(0.5, 0.8, 0.6, 0),
    };
    const figures = yearFigures(maps, Uint8Array.of(1, 1, 1, 0), Uint8Array.of(0, 1, 0, 1));
    expect(figures.meanLightShare).toBeCloseTo(0.6, 6);
    expect(figures.meanDirectHours).toBeCloseTo(1500, 6);
    expect(figures.meanWindCut).toBeCloseTo((0.5 + 0.2 + 0.4) / 3, 6);
    expect(figures.shelteredShare).toBeCloseTo(2 / 3, 6);
    expect(figures.canopyShare).toBeCloseTo(1 / 3, 6);
  });

  test('canopy is the ground under crowns and belts, each counted once, and no wall', () => {
    const document = northWind([
      tree('t', [0, 0], { heightM: 8, measuredYear: 2027, crownRadiusM: 4, species: undefined }),
      tree('same', [0, 0], { heightM: 8, measuredYear: 2027, crownRadiusM: 4, species: undefined }),
      line('b', 30, { kind: 'belt', heightM: 5, widthM: 6 }, 20),
      line('w', -20, { kind: 'wall', heightM: 3 }, 20),
    ]);
    const options = optionsOf(document);
    const [x, y] = toLocal(options.frame, at(0, 0));
    const grid = { columns: 300, rows: 300, cellM: 0.25, westM: x - 37.5, northM: y + 40 };
    const mask = canopyMask(document, options, grid);
    const areaM2 = mask.reduce((sum, cell) => sum + cell, 0) * grid.cellM ** 2;
    // A circle of 4 m and a strip of 40 by 6 m.
    expect(areaM2 / (Math.PI * 16 + 240)).toBeCloseTo(1, 2);
  });
});

describe('which plants grow', () => {
  test('those of a species that are not full-grown, and those that are cut or planted', () => {
    const document = northWind([
      tree('young', [0, 0]),
      tree('old', [9, 0], { heightM: 9.9, measuredYear: 2027 }),
      tree('unknown', [18, 0], { species: undefined }),
      line('wall', 20, { kind: 'wall', heightM: 3 }),
      line('coppiced', 30, {
        kind: 'belt',
        species: 'Alnus glutinosa',
        heightM: 18,
        measuredYear: 2027,
        care: [{ what: 'coppice', year: 2035 }],
      }),
    ]);
    expect(growingPlants(document, optionsOf(document)).map(({ id }) => id)).toEqual(['young', 'coppiced']);
  });
});

describe('first crops', () => {
  const moment = (pace: 'slow' | 'usual' | 'fast') => (year: number) => ({ year, layout: null, pace });
  const document = northWind([
    tree('apple', [0, 0]),
    tree('later', [9, 0], { plantedYear: 2033 }),
    tree('alder', [18, 0], { species: 'Alnus cordata' }),
    tree('cut', [27, 0], { care: [{ what: 'coppice', year: 2045 }] }),
  ]);
  const [apple, later, cut] = bearingTrees(document, null);

  test('come in the catalogue’s year after planting at usual growth, sooner at fast and later at slow', () => {
    expect(bearingTrees(document, null).map(({ tree: { id } }) => id)).toEqual(['apple', 'later', 'cut']);
    expect(bearsFrom(document, apple, YEARS, moment('usual'))).toBe(apple.yearsToBear);
    expect(bearsFrom(document, later, YEARS, moment('usual'))).toBe(later.yearsToBear + 6);
    expect(bearsFrom(document, apple, YEARS, moment('fast'))!).toBeLessThan(apple.yearsToBear);
    expect(bearsFrom(document, apple, YEARS, moment('slow'))!).toBeGreaterThan(apple.yearsToBear);
  });

  test('stop when a tree is coppiced and come again when it has grown', () => {
    const bears = YEARS.map((year) => bearsAt(document, cut, moment('usual')(year)));
    expect(bears[17]).toBe(true);
    expect(bears[18]).toBe(false);
    expect(bears[40]).toBe(true);
  });
});
