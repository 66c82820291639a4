import { describe, expect, it } from 'vitest';
import type { LonLat } from '../../../src/geo/frame.ts';
import {
  azimuthDeg,
  destination,
  distanceM,
  lineLengthM,
  polygonAreaM2,
  ringPerimeterM,
} from '../../../src/geo/geodesic.ts';

const dms = (deg: number, min: number, sec: number): number => deg + min / 60 + sec / 3600;

describe('geodesics', () => {
  it('reproduce documented distances', () => {
    // GeographicLib, documentation of GeodSolve and of the Python package. From memory.
    expect(Math.abs(distanceM([-73.8, 40.6], [-0.5, 51.6]) - 5551759.4)).toBeLessThan(0.001);
    expect(Math.abs(distanceM([174.81, -41.32], [-5.5, 40.96]) - 19959679.267)).toBeLessThan(0.001);
  });

  it('reproduce a published line of 55 km: length to 1 mm, azimuth to a hundredth of a second', () => {
    // Geocentric Datum of Australia Technical Manual (ICSM), Flinders Peak to Buninyong. From memory.
    const flinders: LonLat = [dms(144, 25, 29.5244), -dms(37, 57, 3.7203)];
    const buninyong: LonLat = [dms(143, 55, 35.3839), -dms(37, 39, 10.1561)];
    expect(Math.abs(distanceM(flinders, buninyong) - 54972.271)).toBeLessThan(0.001);
    expect(Math.abs(azimuthDeg(flinders, buninyong) - dms(306, 52, 5.37))).toBeLessThan(0.01 / 3600);
  });

  it('reach a documented place from a start, an azimuth and a distance', () => {
    // GeographicLib, documentation of GeodSolve: 40°38'23" N 73°46'44" W, 53°30', 5850 km. From memory.
    const end = destination([-dms(73, 46, 44), dms(40, 38, 23)], 53.5, 5850e3);
    expect(Math.abs(end[1] - 49.01467)).toBeLessThan(5e-6);
    expect(Math.abs(end[0] - 2.56106)).toBeLessThan(5e-6);
  });

  it('reproduce a documented area and perimeter, whichever way the ring runs', () => {
    // GeographicLib, documentation of PolygonArea: Antarctica in eighteen points. From memory.
    const ring: LonLat[] = [
      [-58, -63.1],
      [-74, -72.9],
      [-102, -71.9],
      [-102, -74.9],
      [-131, -74.3],
      [-163, -77.5],
      [163, -77.4],
      [172, -71.7],
      [140, -65.9],
      [113, -65.7],
      [88, -66.6],
      [59, -66.9],
      [25, -69.8],
      [-4, -70.0],
      [-14, -71.0],
      [-33, -77.3],
      [-46, -77.9],
      [-61, -74.7],
    ];
    expect(Math.abs(polygonAreaM2([ring]) - 13662703680020.1)).toBeLessThan(1);
    expect(Math.abs(polygonAreaM2([[...ring].reverse()]) - 13662703680020.1)).toBeLessThan(1);
    expect(Math.abs(ringPerimeterM(ring) - 16831067.893)).toBeLessThan(0.001);
    expect(Math.abs(ringPerimeterM([...ring, ring[0]]) - 16831067.893)).toBeLessThan(0.001);
  });
});

describe('a square of 100 m', () => {
  const a: LonLat = [-64.5, 45.1];
  const b = destination(a, 90, 100);
  const c = destination(b, 0, 100);
  const d = destination(a, 0, 100);
  it('has an area of a hectare and sides of 100 m', () => {
    expect(Math.abs(polygonAreaM2([[a, b, c, d, a]]) - 10_000)).toBeLessThan(0.5);
    expect(Math.abs(lineLengthM([a, b, c]) - 200)).toBeLessThan(0.01);
    expect(azimuthDeg(b, a)).toBeCloseTo(270, 2);
  });
  it('loses the area of its hole', () => {
    const hole = [destination(a, 45, 20), destination(a, 45, 60), destination(a, 60, 60)];
    expect(polygonAreaM2([[a, b, c, d], hole])).toBeCloseTo(
      polygonAreaM2([[a, b, c, d]]) - polygonAreaM2([hole]),
      6,
    );
  });
});
