import { describe, expect, it } from 'vitest';
import { declinationAt } from '../../src/geo/declination.ts';
import { fallDegFromText } from '../../src/geo/fall-text.ts';
import type { LonLat } from '../../src/geo/frame.ts';
import { azimuthDeg, distanceM, polygonAreaM2 } from '../../src/geo/geodesic.ts';
import { parseTraverse, traverseBoundary } from '../../src/geo/traverse.ts';

const start: LonLat = [-64.5, 45.1];
const trueNorth = { north: 'true' } as const;

describe('a boundary from sides and bearings', () => {
  it('closes a 3-4-5 triangle exactly and gives its area', () => {
    const legs = parseTraverse('30 N\n40 E\n50 S53°07\'48.37"W');
    const { ring, perimeterM, misclosure } = traverseBoundary({ start, legs, reference: trueNorth });
    expect(perimeterM).toBe(120);
    expect(misclosure.lengthM).toBeLessThan(0.001);
    expect(misclosure.ratio).toBe('none');
    expect(ring).toHaveLength(4);
    expect(ring[3]).toEqual(ring[0]);
    expect(polygonAreaM2([ring])).toBeCloseTo(600, 1);
  });

  // Worked by hand. Sides A to D of a field, L sin b (east) and L cos b (north):
  //   100.0 m  N 30° E   +50.0000  +86.6025
  //   120.0 m  S 60° E  +103.9230  -60.0000
  //    90.0 m  S 20° W   -30.7818  -84.5723
  //   135.0 m  N 65° W  -122.3515  +57.0535
  // Sum: +0.7897 east, -0.9163 north; misclosure 1.2096 m of 445.0 m, 1 in 368, toward 139.24°.
  const legs = parseTraverse('100 N30E\n120 S60E\n90 S20W\n135 N65W');

  it('states the misclosure of a walked field', () => {
    const { perimeterM, misclosure, ring } = traverseBoundary({ start, legs, reference: trueNorth });
    expect(perimeterM).toBe(445);
    expect(misclosure.lengthM).toBeCloseTo(1.2096, 3);
    expect(misclosure.bearingDeg).toBeCloseTo(139.24, 1);
    expect(misclosure.ratio).toBe('1 in 368');
    // Unadjusted, the last side's end stays visible as a corner.
    expect(ring).toHaveLength(6);
    expect(distanceM(ring[4], ring[0])).toBeCloseTo(1.2096, 3);
    expect(distanceM(ring[0], ring[1])).toBeCloseTo(100, 6);
  });

  it('spreads the misclosure by length under the compass rule', () => {
    const { ring } = traverseBoundary({ start, legs, reference: trueNorth, adjust: 'compass-rule' });
    expect(ring).toHaveLength(5);
    // The second corner moves by 220/445 of the misclosure: from (153.923, 26.603) to (153.533, 27.056).
    expect(distanceM(start, ring[2])).toBeCloseTo(Math.hypot(153.533, 27.056), 2);
    expect(azimuthDeg(start, ring[2])).toBeCloseTo((Math.atan2(153.533, 27.056) * 180) / Math.PI, 2);
    expect(distanceM(ring[3], ring[4])).toBeCloseTo(Math.hypot(122.352 + 0.2394, 57.053 + 0.2779), 2);
  });

  it('turns magnetic bearings by the declination of their date', () => {
    const date = new Date('2027-01-15T00:00:00Z');
    const { ring, declinationDeg } = traverseBoundary({
      start,
      legs: parseTraverse('100 0\n100 90\n100 180\n100 270'),
      reference: { north: 'magnetic', date },
    });
    expect(declinationDeg).toBe(declinationAt(start, date).declinationDeg);
    expect(declinationDeg).toBeLessThan(-14); // the needle points well west of north there
    expect(azimuthDeg(ring[0], ring[1])).toBeCloseTo(360 + declinationDeg, 3);
  });

  it('takes sides without the closing one and joins the ends', () => {
    const { ring } = traverseBoundary({ start, legs: parseTraverse('100 0\n100 90'), reference: trueNorth });
    expect(ring).toHaveLength(4);
    expect(polygonAreaM2([ring])).toBeCloseTo(5000, 0);
  });

  it.each([
    [[{ lengthM: 10, bearingDeg: 3 }], /at least 2 sides/],
    [
      [
        { lengthM: -1, bearingDeg: 3 },
        { lengthM: 4, bearingDeg: 5 },
      ],
      /Side 1: the length is -1 m/,
    ],
    [
      [
        { lengthM: 1, bearingDeg: 3 },
        { lengthM: 4, bearingDeg: 500 },
      ],
      /Side 2: the bearing is 500°/,
    ],
    [
      [
        { lengthM: 10, bearingDeg: 0 },
        { lengthM: 10, bearingDeg: 180 },
      ],
      /at least 3 corners/,
    ],
  ])('refuses what is no boundary', (bad, words) => {
    expect(() => traverseBoundary({ start, legs: bad, reference: trueNorth })).toThrow(words);
  });
});

describe('typed sides', () => {
  it.each([
    ['42.5 N35E', 42.5, 35],
    ['42.5 m 35.5', 42.5, 35.5],
    ['42.5 @ 215', 42.5, 215],
    ["42,5 m; S 10°30' W", 42.5, 190.5],
    ['140 ft @ NW', 42.672, 315],
    ['2 ch, n 5 w', 40.2336, 355],
    ['3. 12 m 359.9°', 12, 359.9],
    ['12 m 35d30m', 12, 35.5],
    ['10yd 0', 9.144, 0],
  ])('"%s" is %f m at %f°', (line, lengthM, bearingDeg) => {
    const [leg] = parseTraverse(`# north field\n\n${line}\n`);
    expect(leg.lengthM).toBeCloseTo(lengthM, 9);
    expect(leg.bearingDeg).toBeCloseTo(bearingDeg, 9);
  });

  it.each([
    ['10 N\nabout ten steps north', /^Line 2: "about ten steps north"/],
    ['10 N95E', /^Line 1: /],
    ['10 400', /^Line 1: /],
    ['0 20', /^Line 1: the length is 0/],
    ['10', /^Line 1: /],
    ['  \n', /^No side was typed/],
  ])('%j is refused with the line', (text, words) => {
    expect(() => parseTraverse(text)).toThrow(words);
  });
});

describe('a fall in words', () => {
  it.each([
    ['1 in 15', 3.81407],
    ['1:15', 3.81407],
    ['7 %', 4.00417],
    ['4°', 4],
    ['4,5 deg', 4.5],
    ['level', 0],
  ])('"%s" is %f°', (text, deg) => expect(fallDegFromText(text)).toBeCloseTo(deg, 4));
  it.each(['steep', '1 in 0', '80°', '', '5'])('"%s" is refused', (text) =>
    expect(() => fallDegFromText(text)).toThrow(/is not a fall of the ground/),
  );
});
