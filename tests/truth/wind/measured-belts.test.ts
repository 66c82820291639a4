import { describe, expect, it } from 'vitest';
import { youngStrength } from '../../../src/wind/barrier-effects.ts';
import { UPWIND_OF_ELEVEN } from '../../../src/wind/measured-belts.ts';
import { frictionShare } from '../../../src/wind/weps.ts';
import { ALL_GUESSES } from '../../wind/shelter-scenes.ts';
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
      expect(percentOfOpen(p, UPWIND_OF_ELEVEN.distanceH)).toBeLessThanOrEqual(
        100 * UPWIND_OF_ELEVEN.mostShare,
      );
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

  it('Bird and others 2007, both regressions: the quietest place and the end of “cut by 20 %” within their residual deviation', () => {
    // Xmin = 3.008 ln b - 6.6 (residual 1.8 H), Xs = 12.2 + 0.307 b - 0.0047 b2 (4.1 H), b aerodynamic porosity in percent.
    // Their optical porosities of 0.16 to 0.53 went with aerodynamic ones of 0.24 to 0.61: eight points apart.
    const optical = (words: string) => Number(words.match(/(\d+)%/)?.[1]) / 100 - 0.08;
    const rows = windbreakRows('BIRD_EQ').map(({ density_or_porosity, value, unit }) => {
      const p = optical(density_or_porosity);
      let reach = quietest(p, 0.2).at;
      while (percentOfOpen(p, reach, 0.2) < 80) reach += 0.001;
      return { p, unit, source: Number(value), engine: unit === 'Xmin_H' ? quietest(p, 0.2).at : reach };
    });
    console.log(
      `Bird, regressions: ${rows.map(({ p, unit, source, engine }) => `p ${p.toFixed(2)} ${unit} ${source} published, ${engine.toFixed(1)} here`).join('; ')}`,
    );
    expect(rows).toHaveLength(10);
    // Compared in the digit that the deviations are printed in: the most open belt of all lies right on the second.
    for (const { p, unit, source, engine } of rows) {
      const off = Math.round(10 * Math.abs(engine - source)) / 10;
      expect(off, `p ${p} ${unit}`).toBeLessThanOrEqual(unit === 'Xmin_H' ? 1.8 : 4.1);
    }
  });

  it('AMS Glossary, Shelterbelts: lowest at 3 to 4 H, felt 15 to 20 H downwind and to 6 H upwind, within 1 H', () => {
    expect(windbreakRows('AMS')).toHaveLength(1);
    const lowest = [0.2, 0.3, 0.4].map((p) => quietest(p, 0.3).at);
    const felt = [0.2, 0.3, 0.4].map((p) => {
      let reach = quietest(p, 0.3).at;
      while (percentOfOpen(p, reach, 0.3) < 85) reach += 0.05;
      return reach;
    });
    console.log(
      `AMS: lowest at ${lowest.map((at) => at.toFixed(1)).join(', ')} H, 15 % less to ${felt.map((at) => at.toFixed(1)).join(', ')} H, for p 0.2, 0.3, 0.4`,
    );
    for (const at of lowest) {
      expect(at).toBeGreaterThanOrEqual(3 - 1);
      expect(at).toBeLessThanOrEqual(4 + 1);
    }
    for (const at of felt) {
      expect(at).toBeGreaterThanOrEqual(15);
      expect(at).toBeLessThanOrEqual(20);
    }
    // The function ends at 5 H upwind, with a few hundredths left.
    expect(percentOfOpen(0.3, -4.99, 0.3)).toBeLessThan(97);
  });

  it('Czech stations at 3, 6 and 9 H: a clear effect to 6 H that goes with optical porosity (r 0.842 to 0.936)', () => {
    const porosities = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6];
    const correlation = (x: number) => {
      const left = porosities.map((p) => percentOfOpen(p, x, 0.3));
      const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
      const [mp, ml] = [mean(porosities), mean(left)];
      const sum = (of: (i: number) => number) => porosities.reduce((all, _, i) => all + of(i), 0);
      return (
        sum((i) => (porosities[i] - mp) * (left[i] - ml)) /
        Math.sqrt(sum((i) => (porosities[i] - mp) ** 2) * sum((i) => (left[i] - ml) ** 2))
      );
    };
    console.log(
      `Czech stations: r ${[3, 6, 9].map((x) => `${correlation(x).toFixed(3)} at ${x} H`).join(', ')}`,
    );
    for (const x of [3, 6]) {
      expect(correlation(x), `${x} H`).toBeGreaterThanOrEqual(0.842);
      for (const p of porosities) expect(percentOfOpen(p, x, 0.3), `${x} H, p ${p}`).toBeLessThanOrEqual(70);
    }
  });

  it('Dierickx 2003, orchard behind alder and screen: 40 % less at 1 m, 20 % less at 2 m, little at 3 m, nothing at 4 m', () => {
    // Not a matter of distance but of height: what is read near the top of a screen is hardly sheltered. The source as
    // read gives no height; an effect that ends between 3 and 4 m puts its top there. Only the fall with height can be
    // compared: half of it is left at 2 m, "little" (taken as under a quarter) at 3 m, none at 4 m.
    const published = [1, 0.5, 0.25, 0];
    const rows = [3, 3.5, 4].map((topM) => ({
      topM,
      engine: [1, 2, 3, 4].map((readingHeightM) => youngStrength(topM, readingHeightM, ALL_GUESSES)),
    }));
    console.log(
      `Orchard screen, part of the cut at 1 m left at 1, 2, 3, 4 m: ${published.join(', ')} measured; ${rows.map(({ topM, engine }) => `top ${topM} m: ${engine.map((part) => part.toFixed(2)).join(', ')}`).join('; ')}`,
    );
    // The guess for young belts, with a top of 3 m, is the measured fall to a quarter.
    rows[0].engine.forEach((part, i) => {
      expect(Math.abs(part - published[i]), `${i + 1} m`).toBeLessThanOrEqual(0.25);
    });
    for (const { engine } of rows) {
      expect(engine[3]).toBe(0);
      for (let i = 1; i < 4; i++) expect(engine[i]).toBeLessThanOrEqual(engine[i - 1]);
    }
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
