import { describe, expect, it } from 'vitest';
import type { LonLat } from '../../src/geo/frame.ts';
import { azimuthDeg, destination, distanceM } from '../../src/geo/geodesic.ts';
import { placeByDistance, placeByTwoPlaces } from '../../src/geo/picture-placement.ts';

const size = { widthPx: 800, heightPx: 600 };
const place: LonLat = [-64.5, 45.1];

describe('a picture laid on the ground', () => {
  it('by a distance alone has its top to the north', () => {
    const { cornersLonLat, metresPerPixel, upDeg } = placeByDistance(size, {
      from: { x: 100, y: 300 },
      to: { x: 500, y: 600 },
      lengthM: 250,
      known: { pixel: { x: 0, y: 0 }, lonLat: place },
    });
    expect(metresPerPixel).toBe(0.5);
    expect(upDeg).toBe(0);
    const [nw, ne, se, sw] = cornersLonLat;
    expect(nw).toEqual(place);
    expect(distanceM(nw, ne)).toBeCloseTo(400, 6);
    expect(azimuthDeg(nw, ne)).toBeCloseTo(90, 6);
    expect(distanceM(nw, sw)).toBeCloseTo(300, 6);
    expect(azimuthDeg(nw, sw)).toBeCloseTo(180, 6);
    expect(distanceM(nw, se)).toBeCloseTo(500, 6);
  });

  it('turns by the bearing between the two spots', () => {
    // A line drawn straight up the picture that runs north-east on the ground.
    const { upDeg, cornersLonLat } = placeByDistance(size, {
      from: { x: 400, y: 500 },
      to: { x: 400, y: 100 },
      lengthM: 100,
      bearingDeg: 45,
      known: { pixel: { x: 400, y: 500 }, lonLat: place },
    });
    expect(upDeg).toBeCloseTo(45, 9);
    expect(azimuthDeg(cornersLonLat[3], cornersLonLat[0])).toBeCloseTo(45, 2);
  });

  it('by two places puts both spots where they are', () => {
    const there = destination(place, 200, 180);
    const a = { pixel: { x: 650, y: 80 }, lonLat: place };
    const b = { pixel: { x: 120, y: 410 }, lonLat: there };
    const { cornersLonLat, upDeg, metresPerPixel } = placeByTwoPlaces(size, a, b);
    const [nw, ne, , sw] = cornersLonLat;
    const at = (pixel: { x: number; y: number }): LonLat => [
      nw[0] + ((ne[0] - nw[0]) * pixel.x) / 800 + ((sw[0] - nw[0]) * pixel.y) / 600,
      nw[1] + ((ne[1] - nw[1]) * pixel.x) / 800 + ((sw[1] - nw[1]) * pixel.y) / 600,
    ];
    expect(distanceM(at(a.pixel), place)).toBeLessThan(0.02);
    expect(distanceM(at(b.pixel), there)).toBeLessThan(0.02);
    expect(distanceM(nw, ne)).toBeCloseTo(800 * metresPerPixel, 2);
    expect(azimuthDeg(sw, nw)).toBeCloseTo(upDeg, 2);
  });

  it('is refused when the two spots or places are the same', () => {
    const spot = { pixel: { x: 5, y: 5 }, lonLat: place };
    expect(() => placeByTwoPlaces(size, spot, spot)).toThrow(/two known places are the same/);
    expect(() =>
      placeByDistance(size, { from: spot.pixel, to: spot.pixel, lengthM: 10, known: spot }),
    ).toThrow(/two spots in the picture are the same/);
    expect(() =>
      placeByDistance(size, { from: spot.pixel, to: { x: 90, y: 5 }, lengthM: 0, known: spot }),
    ).toThrow(/distance between the two spots is 0 m/);
  });
});
