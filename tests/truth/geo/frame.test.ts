import { describe, expect, it } from 'vitest';
import {
  convergenceRadAt,
  type Frame,
  frameAt,
  type LonLat,
  toLocal,
  toLonLat,
} from '../../../src/geo/frame.ts';

const dms = (deg: number, min: number, sec: number): number => deg + min / 60 + sec / 3600;
const toDeg = (rad: number): number => (rad * 180) / Math.PI;
const gridOf = (frame: Frame, place: LonLat): [number, number] => {
  const [xM, yM] = toLocal(frame, place);
  return [frame.originEastingM + xM, frame.originNorthingM + yM];
};

// Geocentric Datum of Australia Technical Manual (ICSM), worked example Flinders Peak and Buninyong, MGA zone 55 on
// GRS80, whose grid differs from WGS 84's by less than 0.1 mm. From memory. The manual counts convergence the other
// way (added to an azimuth to give a grid bearing, negative here).
const FLINDERS: LonLat = [dms(144, 25, 29.5244), -dms(37, 57, 3.7203)];
const BUNINYONG: LonLat = [dms(143, 55, 35.3839), -dms(37, 39, 10.1561)];

describe('the frame', () => {
  it('reproduces published UTM coordinates in the south to 1 mm', () => {
    const frame = frameAt(FLINDERS);
    expect(frame.epsg).toBe(32755);
    const [e1, n1] = gridOf(frame, FLINDERS);
    expect(Math.abs(e1 - 273741.297)).toBeLessThan(0.001);
    expect(Math.abs(n1 - 5796489.777)).toBeLessThan(0.001);
    const [e2, n2] = gridOf(frame, BUNINYONG);
    expect(Math.abs(e2 - 228854.052)).toBeLessThan(0.0015);
    expect(Math.abs(n2 - 5828259.038)).toBeLessThan(0.0015);
  });

  it('reproduces published UTM coordinates in the north to 1 cm', () => {
    // GeographicLib, documentation of GeoConvert: 33.3° N 44.4° E is 38n 444140.54 3684706.36. From memory.
    const frame = frameAt([44.4, 33.3]);
    const [easting, northing] = gridOf(frame, [44.4, 33.3]);
    expect(frame.epsg).toBe(32638);
    expect(Math.abs(easting - 444140.54)).toBeLessThan(0.006);
    expect(Math.abs(northing - 3684706.36)).toBeLessThan(0.006);
  });

  it('reproduces published grid convergences to a hundredth of a second', () => {
    // As above: 1° 35' 3.65" and 1° 52' 43.22" between true and grid north, west of a southern meridian: clockwise.
    const second = 1 / 3600;
    expect(Math.abs(toDeg(frameAt(FLINDERS).convergenceRad) - dms(1, 35, 3.65))).toBeLessThan(0.01 * second);
    expect(Math.abs(toDeg(convergenceRadAt(32755, BUNINYONG)) - dms(1, 52, 43.22))).toBeLessThan(
      0.01 * second,
    );
  });

  it('agrees with the published series for the convergence on both hemispheres', () => {
    // Redfearn 1948, as in Snyder 1987 (USGS PP 1395), first two terms:
    // gamma = w sin(phi) [1 + w² cos²(phi) (1 + 3 eta² + 2 eta⁴) / 3]; the next is below 1e-7 rad within 3°.
    const secondEccentricitySq = 0.00673949674227643;
    for (const latDeg of [-60, -43.6, -1, 1, 20, 45.1, 60, 75]) {
      for (const offDeg of [-2.99, -1.5, 0, 0.7, 2.5, 2.99]) {
        const phi = (latDeg * Math.PI) / 180;
        const w = (offDeg * Math.PI) / 180;
        const eta2 = secondEccentricitySq * Math.cos(phi) ** 2;
        const series =
          w * Math.sin(phi) * (1 + ((w * Math.cos(phi)) ** 2 * (1 + 3 * eta2 + 2 * eta2 ** 2)) / 3);
        const found = frameAt([-63 + offDeg, latDeg]).convergenceRad;
        expect(Math.abs(found - series)).toBeLessThan(1.5e-7);
      }
    }
  });

  it('has about 2.6° of convergence near a zone edge at 60°', () => {
    expect(toDeg(frameAt([-60.05, 60]).convergenceRad)).toBeGreaterThan(2.5);
    expect(toDeg(frameAt([-65.95, 60]).convergenceRad)).toBeLessThan(-2.5);
  });
});

describe('the way back', () => {
  it('returns to the same longitude and latitude within 1e-9°', () => {
    for (const place of [
      [-64.5, 45.1],
      [171.9, -43.6],
      [179.99, 12],
      [0, 0.2],
      [10, 83.9],
    ] as LonLat[]) {
      const frame = frameAt(place);
      const there: LonLat = [place[0] - 0.004, place[1] + 0.003];
      const back = toLonLat(frame, toLocal(frame, there));
      expect(Math.abs(back[0] - there[0])).toBeLessThan(1e-9);
      expect(Math.abs(back[1] - there[1])).toBeLessThan(1e-9);
      expect(Number.isInteger(frame.originEastingM) && Number.isInteger(frame.originNorthingM)).toBe(true);
      const [xM, yM] = toLocal(frame, place);
      expect(Math.max(Math.abs(xM), Math.abs(yM))).toBeLessThanOrEqual(0.5);
    }
  });

  it('takes the last zone at 180° and the northern zone on the equator', () => {
    expect(frameAt([180, 10]).epsg).toBe(32660);
    expect(frameAt([-180, 10]).epsg).toBe(32601);
    expect(frameAt([9, 0]).epsg).toBe(32632);
  });

  it.each([
    [[10, 84.5], /84/],
    [[10, -80.5], /80/],
    [[10, 95], /not on the globe/],
    [[-200, 5], /not on the globe/],
    [[Number.NaN, 5], /not on the globe/],
  ] as [LonLat, RegExp][])('refuses %j with a sentence', (place, words) => {
    expect(() => frameAt(place)).toThrow(words);
  });
});
