import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { metresPerPixel, northTurnDeg, scaleLength } from '../../src/map/scale-length.ts';

const degreesPerPixel = (zoom: number) => 360 / (512 * 2 ** zoom);

describe('the scale bar', () => {
  it.each([
    [0, 14],
    [45.1, 17],
    [-43.6, 17],
    [60, 19],
    [68, 16],
  ])('is as long as the geodesic at latitude %f, zoom %f', (latitude, zoom) => {
    const bar = scaleLength(metresPerPixel(latitude, zoom), 160, 'metric');
    const lengthDeg = bar.lengthPx * degreesPerPixel(zoom);
    const { s12 } = geodesic.Geodesic.WGS84.Inverse(latitude, 10, latitude, 10 + lengthDeg);
    expect(s12! / bar.lengthM).toBeCloseTo(1, 6);
  });

  it('takes the longest of 1, 2, 5 that fits', () => {
    expect(scaleLength(0.3, 160, 'metric')).toMatchObject({ label: '20 m', lengthM: 20 });
    expect(scaleLength(0.33, 160, 'metric').label).toBe('50 m');
    expect(scaleLength(20, 160, 'metric').label).toBe('2 km');
    expect(scaleLength(0.004, 160, 'metric').label).toBe('0.5 m');
    for (const metresPerPx of [0.01, 0.07, 0.3, 1.9, 14]) {
      const bar = scaleLength(metresPerPx, 160, 'metric');
      expect(bar.lengthPx).toBeLessThanOrEqual(160);
      expect(bar.lengthPx).toBeGreaterThan(160 / 2.51);
    }
  });

  it('is in feet, then miles, for a person who measures so', () => {
    expect(scaleLength(0.3, 160, 'imperial')).toMatchObject({ label: '100 ft', lengthM: 30.48 });
    expect(scaleLength(20, 160, 'imperial').label).toBe('1 mi');
    expect(scaleLength(20, 160, 'imperial').lengthM).toBeCloseTo(1609.344, 6);
  });
});

describe('the north arrow', () => {
  it('turns against the map', () => {
    expect(northTurnDeg(0)).toBe(0);
    expect(northTurnDeg(30)).toBe(-30);
    expect(northTurnDeg(-90)).toBe(90);
  });
});
