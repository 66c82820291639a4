import { describe, expect, it } from 'vitest';
import { GROUND_KINDS, groundKinds, NO_KIND } from '../../src/choose/ground-kinds.ts';
import { stateFigures } from '../../src/choose/state-figures.ts';

/** Two rows of three cells; the last is not the field's. */
const grid = { columns: 3, rows: 2, cellM: 1, westM: 0, northM: 2 };
const mask = Uint8Array.of(1, 1, 1, 1, 1, 0);
const lightShare = Float32Array.of(0.9, 0.5, 0.7, Number.NaN, 0.8, 0.1);
const growing = [0.5, 0.6, 0.9, 0.5, 0.65, 0.1];
const rest = [0.8, 0.8, 0.8, 0.8, 0.8, 0.1];
const gales = [10, 20, 30, 40, 50, 999];
const light = {
  lightShare,
  directHours: new Float32Array(6),
  seasonHours: Float32Array.of(1000, 500, 700, Number.NaN, 800, 1),
  midwinterShare: Float32Array.of(0.8, 0.4, 0.6, Number.NaN, 0.6, 0.1),
  midwinterHours: Float32Array.of(60, 20, 40, Number.NaN, 40, 1),
};
const shelter = {
  grid,
  windShare: Float32Array.from([...growing, ...rest, ...growing]),
  galeHours: Float32Array.from([...new Array(12).fill(0), ...gales]),
  directions: 1,
};
const enough = { light: 0.68, windCut: 0.3 };

describe('the figures of a field', () => {
  it('are means and shares over its own cells, each of the cells that it is known of', () => {
    const found = stateFigures(light, shelter, mask, enough);
    expect(found.windCutGrowing).toBeCloseTo(1 - (0.5 + 0.6 + 0.9 + 0.5 + 0.65) / 5, 6);
    expect(found.windCutRest).toBeCloseTo(0.2, 6);
    expect(found.galeHours).toBeCloseTo(30, 6);
    expect(found.sunHoursGrowing).toBeCloseTo(750, 6);
    expect(found.sunHoursMidwinter).toBeCloseTo(40, 6);
    expect(found.lightGrowing).toBeCloseTo((0.9 + 0.5 + 0.7 + 0.8) / 4, 6);
    expect(found.lightMidwinter).toBeCloseTo(0.6, 6);
    // Lit: the first, third and fifth of the four whose light is known; in shelter: all of five but the third.
    expect(found.lightEnoughShare).toBe(3 / 4);
    expect(found.shelterEnoughShare).toBeCloseTo(4 / 5, 6);
    expect(found.bothShare).toBe(2 / 4);
  });

  it('are the shares of the kinds of ground that the pictures show', () => {
    const kinds = groundKinds({ lightShare, windShare: shelter.windShare.slice(0, 6) }, mask, enough);
    const found = stateFigures(light, shelter, mask, enough);
    const known = kinds.filter((kind) => kind !== NO_KIND).length;
    const of = (kind: (typeof GROUND_KINDS)[number]) =>
      kinds.filter((each) => each === GROUND_KINDS.indexOf(kind)).length / known;
    expect(known).toBe(4);
    expect(of('both')).toBeCloseTo(found.bothShare, 6);
    expect(of('both') + of('light')).toBeCloseTo(found.lightEnoughShare, 6);
    expect([kinds[3], kinds[5]]).toEqual([NO_KIND, NO_KIND]);
  });
});
