import geographiclib from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../../src/geo/frame.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { rowPlaces } from '../../src/site/row-places.ts';
import { line } from './small-site.ts';

/** Straight from the geodesic library, not through our own code. */
const apartM = (a: LonLat, b: LonLat): number =>
  geographiclib.Geodesic.WGS84.Inverse(a[1], a[0], b[1], b[0]).s12 as number;

describe('places of a row', () => {
  it('stand the given distance apart on the ground, whichever way the row runs', () => {
    const random = seededRandom(11);
    for (const lat of [-43.6, 0, 45.1, 60]) {
      for (let i = 0; i < 8; i++) {
        const from: LonLat = [random() * 300 - 150, lat];
        const to: LonLat = [from[0] + (random() - 0.5) * 0.004, lat + (random() - 0.5) * 0.004];
        const { places, lengthM } = rowPlaces([from, to], { spacingM: 7.5, fit: 'given' });
        expect(places).toHaveLength(Math.floor(apartM(from, to) / 7.5) + 1);
        for (let k = 1; k < places.length; k++) expect(apartM(places[k - 1], places[k])).toBeCloseTo(7.5, 6);
        expect(lengthM).toBeCloseTo(apartM(from, to), 6);
        expect(places[0]).toEqual(from);
      }
    }
  });

  it('fit evenly from end to end when asked', () => {
    const [a, b] = line([0, 0], [100, 0]);
    const { places, spacingM } = rowPlaces([a, b], { spacingM: 7, fit: 'fitted' });
    expect(places).toHaveLength(15);
    expect(spacingM).toBeCloseTo(100 / 14, 6);
    expect(apartM(places[14], b)).toBeLessThan(1e-6);
    for (let k = 1; k < 15; k++) expect(apartM(places[k - 1], places[k])).toBeCloseTo(100 / 14, 6);
  });

  it('keep the last place of a line drawn to a multiple of the spacing', () => {
    expect(rowPlaces(line([0, 0], [0, 60]), { spacingM: 6, fit: 'given' }).places).toHaveLength(11);
  });

  it('follow the bends: the distance is measured along the line', () => {
    const bent = line([0, 0], [10, 0], [10, 10]);
    const { places, lengthM } = rowPlaces(bent, { spacingM: 4, fit: 'given' });
    expect(lengthM).toBeCloseTo(20, 4);
    expect(places).toHaveLength(6);
    const [third] = places.slice(3, 4);
    expect(apartM(third, line([10, 2])[0])).toBeLessThan(1e-3);
    expect(apartM(places[5], bent[2])).toBeLessThan(1e-3);
  });

  it('survive repeated points and a line without length', () => {
    const [a, b] = line([0, 0], [12, 0]);
    expect(rowPlaces([a, a, b, b], { spacingM: 6, fit: 'given' }).places).toHaveLength(3);
    expect(rowPlaces([a, a], { spacingM: 6, fit: 'fitted' }).places).toEqual([a]);
  });

  it('refuse a spacing that means nothing', () => {
    for (const spacingM of [0, -2, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => rowPlaces(line([0, 0], [9, 0]), { spacingM, fit: 'given' })).toThrow(
        'expected a number of metres above 0',
      );
    expect(() => rowPlaces(line([0, 0], [300, 0]), { spacingM: 0.1, fit: 'given' })).toThrow('at most 2000');
  });
});
