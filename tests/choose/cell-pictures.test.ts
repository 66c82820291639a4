import { describe, expect, it } from 'vitest';
import { barsOf, cellShapes, measurePictures } from '../../src/choose/cell-pictures.ts';
import { measureOf } from '../../src/choose/measures.ts';
import { inventedField } from './invented-fields.ts';

describe('the small pictures of the table of fields', () => {
  it('are bars of the whole for shares, of the row’s longest otherwise, and none where nothing is known', () => {
    expect(barsOf([[0.25, -0.1], [1.2], [null]], true)).toEqual([
      { shares: [0.25, 0] },
      { shares: [1] },
      { shares: [null] },
    ]);
    expect(barsOf([[30], [120, Number.POSITIVE_INFINITY], [0]], false)).toEqual([
      { shares: [0.25] },
      { shares: [1, null] },
      { shares: [0] },
    ]);
    expect(barsOf([[0], [0]], false)).toEqual([{ shares: [0] }, { shares: [0] }]);
  });

  it('are those of a measure in each state that is asked for, and an arrow for the way down', () => {
    const field = inventedField('Field', {
      byState: { stands: { windCutGrowing: 0.1 }, 20: { windCutGrowing: 0.6 } },
      ground: { aspectDeg: 90 },
    });
    expect(measurePictures(measureOf('windCutGrowing'), [field], ['stands', 20])).toEqual([
      { shares: [0.1, 0.6] },
    ]);
    expect(measurePictures(measureOf('areaM2'), [field], ['stands', 20])).toEqual([{ shares: [1] }]);
    expect(measurePictures(measureOf('aspectDeg'), [field], ['stands'])).toEqual([{ towardsDeg: 90 }]);
    const level = inventedField('Level', { ground: { aspectDeg: null } });
    expect(measurePictures(measureOf('aspectDeg'), [level], ['stands'])).toEqual([null]);
  });

  it('stay in their place: a bar from the left, bars from the bottom, an arrow with its tip where the slope falls', () => {
    const [one] = cellShapes({ shares: [0.5] }, 36, 14).filled;
    expect(Math.max(...one.map(([x]) => x))).toBe(18);
    const several = cellShapes({ shares: [1, null, 0.5, 0] }, 36, 14);
    expect(several.filled.map((shape) => Math.min(...shape.map(([, y]) => y)))).toEqual([0, 7]);
    expect(several.filled.map((shape) => shape[0][0])).toEqual([0, 18]);
    const { filled, from } = cellShapes({ towardsDeg: 90 }, 36, 14);
    expect(from).toBeNull();
    expect(filled[0][0][0]).toBeCloseTo(14, 9);
    expect(filled[0][0][1]).toBeCloseTo(7, 9);
    for (const [x, y] of filled[0]) {
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(-1e-9);
      expect(Math.max(x, y)).toBeLessThanOrEqual(14 + 1e-9);
    }
  });
});
