import { describe, expect, test } from 'vitest';
import { foliageFactors } from '../../src/plants/foliage-range.ts';
import { atEnd } from '../../src/scene/ends.ts';
import { siteFrame } from '../../src/scene/site-ground.ts';
import { standingAt } from '../../src/scene/things.ts';
import { smallSite } from '../state/small-site.ts';

const document = smallSite();
const expected = { year: 20, layout: null, pace: 'usual', frame: siteFrame(document) } as const;
const walnut = (end: Parameters<typeof atEnd>[1]) =>
  standingAt(document, atEnd(expected, end)).trees[0].stand;

describe('the site at an end of what is not known', () => {
  test('crowns spread a fifth wider or narrower, and nothing else changes', () => {
    const usual = walnut(null);
    for (const [end, factor] of [
      ['wide-crowns', 1.2],
      ['narrow-crowns', 0.8],
    ] as const) {
      const there = walnut(end);
      expect(there.radiusM).toBeCloseTo(usual.radiusM * factor, 9);
      expect({ ...there, radiusM: usual.radiusM }).toEqual(usual);
    }
  });

  test('slow and fast growth lie to both sides of the usual', () => {
    expect(walnut('slow-growth').heightM).toBeLessThan(walnut(null).heightM);
    expect(walnut('fast-growth').heightM).toBeGreaterThan(walnut(null).heightM);
  });

  test('denser and more open foliage change the depth of crowns and not their size', () => {
    expect(walnut('dense-foliage').depthPerMOn).toBeGreaterThan(walnut(null).depthPerMOn);
    expect(walnut('open-foliage').depthPerMOn).toBeLessThan(walnut(null).depthPerMOn);
    expect(walnut('dense-foliage').radiusM).toBe(walnut(null).radiusM);
  });
});

describe('the range of foliage', () => {
  // Published transmittances: reference, section 6 (Mendoza; Wilkinson 1992; Heisler 1986).
  const power = (share: number, factor: number) => share ** factor;

  test('of a measured species reaches from the densest to the most open of three measurements of maples', () => {
    const middle = Math.sqrt(0.14 * 0.2);
    expect(power(middle, foliageFactors('dense', true, false).leafOn)).toBeCloseTo(0.14, 6);
    expect(power(middle, foliageFactors('open', true, false).leafOn)).toBeCloseTo(0.2, 6);
    const leafless = Math.sqrt(0.471 * 0.6);
    expect(power(leafless, foliageFactors('dense', true, false).leafOff)).toBeCloseTo(0.471, 6);
    expect(power(leafless, foliageFactors('open', true, false).leafOff)).toBeCloseTo(0.6, 6);
  });

  test('of a species without a figure of its own reaches over the whole table, and the usual is left alone', () => {
    const middle = Math.sqrt(0.11 * 0.27);
    expect(power(middle, foliageFactors('dense', false, false).leafOn)).toBeCloseTo(0.11, 6);
    expect(power(middle, foliageFactors('open', false, false).leafOn)).toBeCloseTo(0.27, 6);
    expect(foliageFactors('usual', false, false)).toEqual({ leafOn: 1, leafOff: 1 });
  });

  test('of an evergreen is as wide in winter as in summer', () => {
    const { leafOn, leafOff } = foliageFactors('dense', true, true);
    expect(leafOff).toBe(leafOn);
  });
});
