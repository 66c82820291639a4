import { describe, expect, it } from 'vitest';
import { planSpots } from '../../../src/windspots/plan-spots.ts';
import { beltSite, wish } from '../../windspots/belt-site.ts';
import { windbreakRows } from './windbreak-tables.ts';

/**
 * Spots behind a belt against the tables: from a site file through frame, belt, leaf state and wind to the promise,
 * and that is the published function and what was measured. The belt is as thin as the tables' (no width).
 */
const published = windbreakRows('WEPS').filter(
  ({ density_or_porosity, barrier, distance_H }) =>
    barrier === 'thin barrier width 0' &&
    density_or_porosity === 'optical porosity 0.4' &&
    Number(distance_H) >= 2,
);

describe('what is promised at spots behind a long thin belt, p = 0.4', () => {
  for (const fromDeg of [270, 17])
    it(`is the published function square to a wind from ${fromDeg} degrees, within 0.002`, () => {
      const heights = published.map(({ distance_H }) => Number(distance_H)).filter((x) => x < 35);
      const { spots } = planSpots(
        beltSite({}, [], fromDeg),
        'b1',
        wish({ heights, wind: { fromDeg, speedMps: 6 } }),
      );
      const worst = spots.map(({ distanceH, expected: { share } }) => {
        const row = published.find(({ distance_H }) => Math.abs(Number(distance_H) - distanceH) < 0.01);
        return Math.abs(share - Number(row?.value));
      });
      console.log(`worst of ${worst.length}: ${Math.max(...worst).toFixed(4)}`);
      expect(spots).toHaveLength(heights.length);
      for (const miss of worst) expect(miss).toBeLessThan(0.002);
    });

  it('holds Iowa’s measured shares of a moderately dense belt in its range, at 5 to 30 heights', () => {
    const rows = windbreakRows('ISU');
    const heights = rows.map(({ distance_H }) => Number(distance_H));
    const { spots } = planSpots(beltSite(), 'b1', wish({ heights }));
    expect(spots).toHaveLength(rows.length);
    rows.forEach(({ value }, i) => {
      const share = 1 - Number(value) / 100;
      expect(spots[i].expected.low).toBeLessThanOrEqual(share);
      expect(spots[i].expected.high).toBeGreaterThanOrEqual(share);
    });
  });

  it('holds the quietest and the least quiet place of nine conifer belts (29 and 71 %) in its range, at 2 to 6 heights', () => {
    for (const opticalPorosityLeafOn of [0.05, 0.15, 0.31]) {
      const { spots } = planSpots(beltSite({ opticalPorosityLeafOn }), 'b1', wish({ heights: [2, 4, 6] }));
      for (const { expected } of spots) {
        expect(expected.low).toBeLessThanOrEqual(0.29);
        expect(expected.high).toBeGreaterThanOrEqual(0.71);
        // Whoever goes out is told that the function alone is quieter than any of them.
        expect(expected.share).toBeLessThan(0.29);
      }
    }
  });
});
