import { describe, expect, it } from 'vitest';
import { frictionShare } from '../../../src/wind/weps.ts';
import { windbreakRows } from './windbreak-tables.ts';

/**
 * What was measured behind real belts, beside what the engine says; the differences are printed. A function of friction
 * velocity near the ground is taken for the wind at 1.5 m. Sources on belts of middling porosity agree with it to
 * 12 points, as they do with each other. Behind dense belts it is quieter than anything measured: that is no
 * agreement within a tolerance but a known disagreement, and is tested as one, so that a better model shows.
 */
const percentOfOpen = (p: number, x: number, w = 0): number => 100 * frictionShare(p, x, w);
const print = (what: string, rows: (readonly [string, number, number])[]) =>
  console.log(
    `${what}: ${rows.map(([at, source, engine]) => `${at} ${source} % measured, ${engine.toFixed(0)} % here`).join('; ')}`,
  );
function quietest(p: number, w: number): { at: number; percent: number } {
  let at = 0;
  for (let x = 0; x <= 35; x += 0.1) if (percentOfOpen(p, x, w) < percentOfOpen(p, at, w)) at = x;
  return { at, percent: percentOfOpen(p, at, w) };
}

describe('measured belts', () => {
  it('Iowa State University Extension, Farmstead Windbreaks, Table 1: moderately dense belt, within 12 points', () => {
    // "Moderately dense" is a density of some 60 %: p = 0.4, two heights of width to one of height.
    const rows = windbreakRows('ISU').map(
      ({ distance_H, value }) =>
        [`${distance_H} H`, 100 - Number(value), percentOfOpen(0.4, Number(distance_H), 0.5)] as const,
    );
    print('Iowa', rows);
    expect(rows).toHaveLength(6);
    for (const [at, source, engine] of rows) expect(Math.abs(source - engine), at).toBeLessThanOrEqual(12);
  });

  it('Bird and others 2007, eleven Victorian belts of optical porosity 0.16 to 0.53', () => {
    for (const p of [0.16, 0.3, 0.4, 0.53]) {
      // At least 20 % less wind 1 H upwind; an effect to 3 H upwind.
      expect(percentOfOpen(p, -1)).toBeLessThanOrEqual(80);
      expect(percentOfOpen(p, -3)).toBeLessThan(100);
      // The quietest place lies at 1 to 7 H; below 80 % to 8 to 25 H.
      const { at } = quietest(p, 0.2);
      expect(at).toBeGreaterThanOrEqual(1);
      expect(at).toBeLessThanOrEqual(7);
      let reach = at;
      while (percentOfOpen(p, reach, 0.2) < 80) reach += 0.1;
      expect(reach).toBeGreaterThanOrEqual(8);
      expect(reach).toBeLessThanOrEqual(25);
    }
  });

  it('Loeffler, Gordon & Gillespie, nine conifer belts: a known disagreement, quieter than the quietest (29 %)', () => {
    // Optical porosity of the bottom half 0 to 31 %. The function is quieter than any of the nine: it is a friction
    // velocity near the ground, and their porosity is of the bottom half alone.
    const rows = [0.05, 0.15, 0.31].map((p) => {
      const { at, percent } = quietest(p, 0.4);
      return [`p ${p} at ${at.toFixed(1)} H`, 29, percent] as const;
    });
    print('Loeffler, least of nine', rows);
    for (const [at, source, engine] of rows) expect(engine, at).toBeLessThan(source);
    expect(quietest(0.31, 0.4).at).toBeGreaterThanOrEqual(2);
    expect(quietest(0.31, 0.4).at).toBeLessThanOrEqual(6);
  });

  it('Moravian belts of 15 to 18 m in full leaf (Contributions to Geophysics and Geodesy): a known disagreement, quieter at all three distances', () => {
    // Optical porosity 0.1; 60 % less wind at 50 m (3 H), 30 % less at 150 m (9 H), nil by 250 m (15 H).
    const rows = [
      ['3 H', 40, percentOfOpen(0.1, 50 / 16.5, 0.6)],
      ['9 H', 70, percentOfOpen(0.1, 150 / 16.5, 0.6)],
      ['15 H', 100, percentOfOpen(0.1, 250 / 16.5, 0.6)],
    ] as const;
    print('Moravia', [...rows]);
    for (const [at, source, engine] of rows) expect(engine, at).toBeLessThan(source);
    const { at } = quietest(0.1, 0.6);
    expect(at).toBeGreaterThan(1);
    expect(at).toBeLessThan(6);
  });

  it('Nebraska EC 91-1763 (from memory): conifers of density 40 to 60 %, within 12 whole points at p = 0.5', () => {
    const rows = windbreakRows('EC1763')
      .filter(({ barrier }) => barrier === 'single row conifer')
      .map(
        ({ distance_H, value }) =>
          [`${distance_H} H`, Number(value), Math.round(percentOfOpen(0.5, Number(distance_H)))] as const,
      );
    print('Nebraska (from memory)', rows);
    expect(rows).toHaveLength(5);
    for (const [at, source, engine] of rows) expect(Math.abs(source - engine), at).toBeLessThanOrEqual(12);
  });
});
