import { describe, expect, test } from 'vitest';
import { distanceM } from '../../src/geo/geodesic.ts';
import { planSpots } from '../../src/windspots/plan-spots.ts';
import { beltSite, beside, HERE, thing, wish } from './belt-site.ts';

describe('spots behind a belt', () => {
  test('lie square to it on its lee side, at so many of its heights, and are found by two tapes', () => {
    const { spots, line, alongM } = planSpots(beltSite(), 'b1', wish({ heights: [15, 2, 5] }));
    expect(spots.map(({ words }) => words)).toEqual([
      '2 heights behind',
      '5 heights behind',
      '15 heights behind',
    ]);
    expect(alongM).toBeCloseTo(600, 0);
    [20, 50, 150].forEach((awayM, i) => {
      expect(distanceM(spots[i].lonLat, beside(HERE, awayM, 0))).toBeLessThan(0.1);
      expect(distanceM(line.a.lonLat, spots[i].lonLat)).toBeCloseTo(spots[i].fromA.levelM, 6);
    });
  });

  test('stay where they are when the wind turns; only the way of the wind grows', () => {
    const square = planSpots(beltSite(), 'b1', wish());
    const slanting = planSpots(beltSite(), 'b1', wish({ wind: { fromDeg: 300, speedMps: 6 } }));
    slanting.spots.forEach((spot, i) => {
      expect(distanceM(spot.lonLat, square.spots[i].lonLat)).toBeLessThan(0.01);
      expect(spot.distanceH).toBeCloseTo(square.spots[i].distanceH / Math.cos(Math.PI / 6), 1);
      expect(spot.offSquareDeg).toBeCloseTo(30, 0);
    });
    // At ten heights the function hangs on porosity least, and on the slant with it.
    for (const { expected } of slanting.spots.slice(0, 2))
      expect(expected.parts.map(({ name }) => name)).toContain('oblique wind');
  });

  test('change sides with the wind', () => {
    const { spots } = planSpots(beltSite(), 'b1', wish({ wind: { fromDeg: 90, speedMps: 6 }, heights: [3] }));
    expect(distanceM(spots[0].lonLat, beside(HERE, -30, 0))).toBeLessThan(0.1);
  });

  test('may be any place, and say how far behind it lies', () => {
    const { spots } = planSpots(beltSite(), 'b1', wish({ heights: [], places: [beside(HERE, 73, 20)] }));
    expect(spots[0]).toMatchObject({ words: 'the chosen place' });
    expect(spots[0].distanceH).toBeCloseTo(7.3, 1);
  });

  test('follow the leaves of the day: a bare belt lets more wind through', () => {
    const site = beltSite({ opticalPorosityLeafOn: 0.3, opticalPorosityLeafOff: 0.7 });
    const on = (date: string) => planSpots(site, 'b1', wish({ date, heights: [5] }));
    const [summer, winter] = [on('2027-07-10'), on('2027-01-20')];
    expect(summer.belt).toMatchObject({ leafShare: 1, porosity: 0.3 });
    expect(winter.belt).toMatchObject({ leafShare: 0, porosity: 0.7 });
    expect(winter.spots[0].expected.share).toBeGreaterThan(summer.spots[0].expected.share + 0.2);
    // Nobody measured so open a belt.
    expect(winter.spots[0].expected.measured).toBeNull();
  });
});

describe('the range', () => {
  const { spots } = planSpots(beltSite({ widthM: 3 }), 'b1', wish());
  test('has the function in it, and all its parts in the range by the function', () => {
    for (const { expected } of spots) {
      const { share, byFunction, low, high, parts } = expected;
      expect(byFunction.low).toBeLessThan(share);
      expect(byFunction.high).toBeGreaterThan(share);
      expect(low).toBeLessThanOrEqual(byFunction.low);
      expect(high).toBeGreaterThanOrEqual(byFunction.high);
      expect(byFunction.high - share).toBeCloseTo(Math.hypot(...parts.map(({ above }) => above)), 9);
      expect(parts.map(({ name }) => name)).toContain('gusts and meters');
    }
  });

  test('hangs on the foliage near the belt, and hardly at ten heights, where belts of all kinds are alike', () => {
    const foliage = spots.map(({ expected: { parts } }) => {
      const { below = 0, above = 0 } = parts.find(({ name }) => name === 'foliage') ?? {};
      return below + above;
    });
    expect(foliage[0]).toBeGreaterThan(0.03);
    expect(foliage[2]).toBeLessThan(0.02);
  });

  test('is wider in a light wind, in which hand meters are off by more', () => {
    const at = (speedMps: number) =>
      planSpots(beltSite(), 'b1', wish({ wind: { fromDeg: 270, speedMps }, heights: [5] })).spots[0].expected;
    expect(at(2).metersShare).toBeGreaterThan(at(8).metersShare);
  });

  test('names the nearest place in the open for the other meter', () => {
    const { open, points } = planSpots(beltSite(), 'b1', wish({ wind: { fromDeg: 270, speedMps: 6 } }));
    // Both western corners of the field lie upwind of the belt by 6 heights, beyond what it stills there.
    expect(open?.words).toMatch(/^[A-D], (north|south)-west corner of Small Close$/);
    expect(open?.share).toBeGreaterThan(0.97);
    expect(points.length).toBeGreaterThanOrEqual(4);
  });
});

describe('places that are no good are said in words', () => {
  const why = (site: ReturnType<typeof beltSite>, part: Parameters<typeof wish>[0]) =>
    planSpots(site, 'b1', wish(part)).without;
  const refused = (site: ReturnType<typeof beltSite>, part: Parameters<typeof wish>[0]) => () =>
    why(site, part);

  test('a wind too far off square', () =>
    expect(refused(beltSite(), { wind: { fromDeg: 320, speedMps: 6 } })).toThrow(
      /50° off square; beyond 40° nobody agrees what a belt does/,
    ));

  test('before the belt', () =>
    expect(why(beltSite(), { places: [beside(HERE, -20, 0)] })).toEqual([
      { words: 'the chosen place', why: 'it lies before Long belt, not behind it, in a wind from the west' },
    ]));

  test('near the end of it, or beyond', () => {
    const at = (northM: number) => why(beltSite(), { places: [beside(HERE, 40, northM)] })[0].why;
    expect(at(590)).toMatch(/crosses Long belt within two heights of its end/);
    expect(at(700)).toMatch(/passes Long belt by/);
  });

  test('behind another belt too', () => {
    const other = thing('b2', 'LineString', [beside(HERE, 70, -300), beside(HERE, 70, 300)], {
      kind: 'belt',
      name: 'Inner belt',
      heightM: 4,
    });
    expect(why(beltSite({}, [other]), { heights: [2, 10] })).toContainEqual({
      words: '10 heights behind',
      why: 'Inner belt takes wind there too',
    });
  });

  test('inside a building', () => {
    const barn = thing(
      'h1',
      'Polygon',
      [
        [
          beside(HERE, 45, -5),
          beside(HERE, 55, -5),
          beside(HERE, 55, 5),
          beside(HERE, 45, 5),
          beside(HERE, 45, -5),
        ],
      ],
      { kind: 'building', name: 'Barn', heightM: 5 },
    );
    expect(why(beltSite({}, [barn]), { heights: [1.5, 5] })[0].why).toMatch(/^it lies inside a building/);
  });
});

describe('one sentence for', () => {
  const says = (site: ReturnType<typeof beltSite>, part: Parameters<typeof wish>[0]) => () =>
    planSpots(site, 'b1', wish(part));
  test.each([
    [
      'a gale',
      { wind: { fromDeg: 270, speedMps: 15 } },
      /nobody should stand near trees with a meter in a gale/,
    ],
    ['a breath', { wind: { fromDeg: 270, speedMps: 1 } }, /less turns no hand meter/],
    ['no direction', { wind: { fromDeg: 400, speedMps: 6 } }, 'expected 0 to 360 degrees'],
    ['no distance', { heights: [50] }, 'A distance is 50 heights; expected more than 0 and at most 35.'],
    ['no day', { date: '2027-02-30' }, 'The date is "2027-02-30"; expected a day such as 2027-06-21.'],
    ['no such place', { alongM: 5000 }, /The place is 5000 m along Long belt; expected 0 to 1200\.\d m\./],
  ] as const)('%s', (_, part, sentence) => expect(says(beltSite(), part)).toThrow(sentence));
  test('a belt no taller than a person', () =>
    expect(says(beltSite({ heightM: 2 }), {})).toThrow(
      'Long belt is 2.0 m tall on that day; expected at least 3 m',
    ));
  test('a belt that is not planted yet', () =>
    expect(says(beltSite({ status: 'planned', plantedYear: 2031 }), {})).toThrow(
      'Long belt does not stand there before 2031; expected a thing that shelters in 2027, or a later date.',
    ));
  test('what is no belt', () =>
    expect(() => planSpots(beltSite(), 'f1', wish())).toThrow(
      'Feature "f1" is a field; expected a belt or a wall, fence or net.',
    ));
});
