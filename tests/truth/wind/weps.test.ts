import { describe, expect, it } from 'vitest';
import { barrierPorosity, frictionShare, frictionShareOfBarrier } from '../../../src/wind/weps.ts';
import {
  deficitAt,
  deficitTable,
  distanceNode,
  overPorousFactor,
  tableRow,
} from '../../../src/wind/weps-table.ts';
import { windbreakRows } from './windbreak-tables.ts';

describe('WEPS barrier function (USDA WEPS documentation; values computed independently from its coefficients)', () => {
  it("gives every row of the table to 0.001, by the formula and by the engine's table", () => {
    const rows = windbreakRows('WEPS');
    expect(rows.length).toBeGreaterThan(100);
    const table = deficitTable();
    const errors: number[] = [];
    for (const row of rows) {
      const p = Number(row.density_or_porosity.match(/[\d.]+$/)?.[0]);
      const w = Number(row.barrier.match(/width ([\d.]+)/)?.[1]);
      const x = Number(row.distance_H);
      expect(Number.isFinite(p + w + x), JSON.stringify(row)).toBe(true);
      const tabled = 1 - overPorousFactor(p) * deficitAt(table, tableRow(p, w), distanceNode(x));
      expect(frictionShare(p, x, w), `p ${p} x ${x}`).toBeCloseTo(Number(row.value), 3);
      errors.push(Math.abs(tabled - Number(row.value)));
    }
    errors.sort((a, b) => a - b);
    console.log(
      `WEPS, ${rows.length} rows: engine table off by p50 ${errors[errors.length >> 1].toExponential(1)}, most ${errors[errors.length - 1].toExponential(1)}`,
    );
    expect(errors[errors.length - 1]).toBeLessThan(0.001);
  });

  it.each([
    [0, 0.008, 1.35, 10, 3],
    [0.4, 0.004955, 0.890322, 8, 2.6],
    [0.9, 0.007196, 0.827398, 5.5, 2.1],
  ])('has the published coefficients at p = %f: f at 2 H', (p, a, b, c, d) => {
    const f = Math.min(1, 1 - Math.exp(-a * 4) + b * Math.exp(-0.003 * (2 + c) ** d));
    expect(frictionShareOfBarrier(p, 2)).toBeCloseTo(f, 4);
  });

  it.each([
    [2, 0.3678],
    [5, 0.2583],
    [10, 0.4083],
    [20, 0.8669],
  ])('with a width of one height and p = 0.4: %f H', (x, f) => {
    expect(frictionShare(0.4, x, 1)).toBeCloseTo(f, 3);
  });

  it('has its small step at the upwind limit: 0.968 at p = 0.5', () => {
    expect(frictionShare(0.5, -4.999999, 0)).toBeCloseTo(0.968, 3);
    expect(frictionShare(0.5, -5, 0)).toBe(1);
  });

  it('stays above 0 and at most 1 and its quietest place moves out as porosity rises to 0.6', () => {
    let last = 0;
    for (const p of [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6]) {
      let quietest = 0;
      for (let x = -4.9; x <= 35; x += 0.05) {
        const f = frictionShare(p, x, 0);
        expect(f > 0 && f <= 1).toBe(true);
        if (f < frictionShare(p, quietest, 0)) quietest = x;
      }
      expect(quietest).toBeGreaterThan(last);
      last = quietest;
    }
  });

  it('fades to nothing between p = 0.9 and p = 1', () => {
    expect(frictionShare(1, 5, 0.3)).toBe(1);
    expect(1 - frictionShare(0.95, 5, 0.3)).toBeCloseTo((1 - frictionShare(0.9, 5, 0.3)) / 2, 12);
  });

  it('raises the barrier porosity with width by at most 0.3 of what is closed', () => {
    expect(barrierPorosity(0.4, 0)).toBe(0.4);
    expect(barrierPorosity(0.4, 1e9)).toBeCloseTo(0.58, 12);
  });
});
