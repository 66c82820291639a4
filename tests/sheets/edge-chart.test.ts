import { expect, test } from 'vitest';
import { drawEdgeChart, type EdgeChartInput } from '../../src/sheets/edge-chart.ts';

const bins = Array.from({ length: 20 }, (_, k) => ({
  atM: 2 + 4 * k,
  lightShare: 0.4 + 0.025 * k,
  windCut: 0.7 - 0.02 * k,
}));
const input: EdgeChartInput = {
  years: [
    { year: 0, bins },
    { year: 20, bins },
  ],
  heightM: 20,
  good: [{ fromM: 40, toM: 90 }],
  enough: { light: 0.68, windCut: 0.3 },
};
const SIZES = { width: 330, height: 226, text: 13, pen: 0.7 };
const wordsOf = (units: { unit: string; perM: number }) =>
  drawEdgeChart(input, SIZES, units).flatMap((mark) => (mark.mark === 'text' ? [mark.text] : []));

test('names both curves beside them, and rules lengths below and heights above', () => {
  const words = wordsOf({ unit: 'm', perM: 1 });
  expect(words).toEqual(
    expect.arrayContaining(['light', 'wind cut', 'heights', 'm out', '0', '20', '60', '1', '3']),
  );
  expect(wordsOf({ unit: 'ft', perM: 1 / 0.3048 })).toEqual(expect.arrayContaining(['ft out', '100', '200']));
});

test('everything lies on the sheet, the curves in their frame, and the names do not lie on each other', () => {
  const close = {
    ...input,
    years: input.years.map((one) => ({
      ...one,
      bins: one.bins.map((bin) => ({ ...bin, windCut: bin.lightShare })),
    })),
  };
  const marks = drawEdgeChart(close, SIZES, { unit: 'm', perM: 1 });
  for (const mark of marks)
    if (mark.mark === 'line')
      for (const [x, y] of mark.pointsMm) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(SIZES.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(SIZES.height);
      }
  const heights = marks.flatMap((mark) =>
    mark.mark === 'text' && ['light', 'wind cut'].includes(mark.text) ? [mark.atMm[1]] : [],
  );
  expect(Math.abs(heights[0] - heights[1])).toBeGreaterThanOrEqual(SIZES.text);
});
