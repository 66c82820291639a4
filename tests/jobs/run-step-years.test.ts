import { describe, expect, test } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { paceSpeeds, runStepYears } from '../../src/jobs/run-step-years.ts';
import { treeAtYear } from '../../src/scene/stand-at-year.ts';
import type { FeatureOf, SiteDocument } from '../../src/site/document.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { line, northWind, optionsOf, tree } from '../years/years-site.ts';

const runner = createLocalRunner();
const step = (document: SiteDocument, fullEffect: number) =>
  runStepYears(runner, {
    document,
    options: optionsOf(document),
    shelter: USUAL_SHELTER_OPTIONS,
    fullEffect,
  });
const net = (properties: object) =>
  line('net', 10, { kind: 'wall', heightM: 4, opticalPorosity: 0.5, ...properties });

describe('growth and shelter stepped together', () => {
  test('a tree is no shelter to itself, and in the open every season is a usual one', async () => {
    const sectors = Array.from({ length: 16 }, (_, k) => ({
      fromDeg: 22.5 * k,
      frequency: 1 / 16,
      meanSpeedMps: 5,
    }));
    for (const place of [
      [0, 0],
      [0.9, 0.3],
      [-0.4, 0.7],
    ] as const) {
      const document = northWind([tree('t', place)], { wind: { heightM: 10, sectors } });
      const speeds = (await step(document, 1.2)).get('t')!;
      for (const speed of speeds) expect(speed).toBeLessThan(1.005);
    }
  });

  test('behind a net a tree grows faster in the seasons in which the net stands, and in no other', async () => {
    // The net stands from 2030 to 2034: years 3 to 7.
    const document = northWind([tree('t', [0, 0]), net({ fromYear: 2030, toYear: 2034 })]);
    const speeds = (await step(document, 1.2)).get('t')!;
    for (const year of [0, 2, 8, 20]) expect(speeds[year], `year ${year}`).toBeCloseTo(1, 2);
    for (const year of [3, 5, 7]) expect(speeds[year], `year ${year}`).toBeGreaterThan(1.1);
    // What it has gained stays: its age on the curve is ahead by what those seasons added.
    const [t] = document.features as FeatureOf<'tree'>[];
    const heightM = (year: number, of: typeof speeds | null) =>
      treeAtYear(document, t, {
        year,
        layout: null,
        pace: 'usual',
        speeds: of && new Map([['t', of]]),
      })!.heightM;
    expect(heightM(2, speeds)).toBeCloseTo(heightM(2, null), 2);
    const ahead = speeds.subarray(0, 21).reduce((sum, speed) => sum + speed - 1, 0);
    expect(ahead).toBeGreaterThan(0.5);
    expect(ahead).toBeLessThan(1.1);
    expect(heightM(20, speeds)).toBeGreaterThan(heightM(20, null));
    expect(heightM(20, speeds)).toBeLessThan(
      heightM(21, null) + (heightM(22, null) - heightM(21, null)) * 0.1,
    );
  });

  test('a belt is no shelter to itself, but one belt is to another', async () => {
    const belt = (id: string, northM: number) =>
      line(id, northM, { kind: 'belt', status: 'planned', species: 'Alnus cordata', plantedYear: 2027 });
    const alone = (await step(northWind([belt('b', 0)]), 2)).get('b')!;
    for (const speed of alone) expect(speed).toBeCloseTo(1, 6);
    const two = await step(northWind([belt('windward', 150), belt('leeward', 0)]), 2);
    expect(two.get('leeward')![15]).toBeGreaterThan(two.get('windward')![15] + 0.2);
  });

  test('as a belt grows its trees grow faster, and they shelter each other', async () => {
    const trees = Array.from({ length: 30 }, (_, i) =>
      tree(`t${i}`, [((i % 6) - 3) * 6, -Math.floor(i / 6) * 6]),
    );
    const belt = line('b', 12, {
      kind: 'belt',
      species: 'Populus nigra',
      status: 'planned',
      plantedYear: 2030,
    });
    const speeds = (await step(northWind([belt, ...trees]), 1.2)).get('t0')!;
    // Nothing reaches the height of the reading, 1.5 m, in the first year; the belt is planted in the fourth.
    expect(speeds[0]).toBeCloseTo(1, 6);
    expect(speeds[2]).toBeLessThan(speeds[5] - 0.02);
    expect(speeds[10]).toBeGreaterThan(1.15);
    for (const speed of speeds) {
      expect(speed).toBeGreaterThanOrEqual(1);
      expect(speed).toBeLessThanOrEqual(1.2 + 1e-6);
    }
  });

  test('what does not grow is not asked for, and where shelter counts for nothing nobody is', async () => {
    const old = { kind: 'belt', status: 'existing', heightM: 8 };
    const document = northWind([tree('t', [0, 0]), line('old', 10, old)]);
    expect([...(await step(document, 1.2)).keys()]).toEqual(['t']);
    expect((await step(document, 1)).size).toBe(0);
    const request = { document, options: optionsOf(document), shelter: USUAL_SHELTER_OPTIONS };
    expect(await paceSpeeds(runner, request)('usual')).toBeNull();
    const reckoned = { ...document, site: { ...document.site, shelterEffect: { usual: 1.1 } } };
    const speeds = (await paceSpeeds(runner, { ...request, document: reckoned })('usual'))!.get('t')!;
    expect(Math.max(...speeds)).toBeGreaterThan(1.05);
    expect(Math.max(...speeds)).toBeLessThanOrEqual(1.1 + 1e-6);
  });

  test('the band runs from slow growth that shelter does nothing for to fast growth with the most of it', async () => {
    const document = northWind([tree('t', [0, 0]), net({})]);
    const request = { document, options: optionsOf(document), shelter: USUAL_SHELTER_OPTIONS };
    const at = paceSpeeds(runner, request);
    expect(await at('slow')).toBeNull();
    const fast = await at('fast');
    // A site that says nothing holds 1.2 for the most.
    expect(Math.max(...fast!.get('t')!)).toBeGreaterThan(1.1);
    expect(Math.max(...fast!.get('t')!)).toBeLessThanOrEqual(1.2 + 1e-6);
    expect(await at('fast')).toBe(fast);
  });

  test('a larger effect never slows a season, and the order of the features changes nothing', async () => {
    const features = [
      tree('a', [-20, 0]),
      tree('b', [0, -8]),
      tree('c', [15, -15], { species: 'Juglans regia' }),
      net({}),
    ];
    const [less, more] = [await step(northWind(features), 1.1), await step(northWind(features), 1.5)];
    for (const [id, speeds] of less)
      speeds.forEach((speed, year) => {
        expect(more.get(id)![year]).toBeGreaterThanOrEqual(speed - 1e-6);
      });
    const turned = await step(northWind([...features].reverse()), 1.1);
    for (const [id, speeds] of less)
      speeds.forEach((speed, year) => {
        expect(turned.get(id)![year]).toBeCloseTo(speed, 6);
      });
  });

  test('several threads step to the same', async () => {
    const features = [
      tree('a', [0, 0]),
      net({}),
      line('b', -30, { kind: 'belt', species: 'Alnus cordata', status: 'planned', plantedYear: 2027 }),
    ];
    const document = northWind(features);
    const request = {
      document,
      options: optionsOf(document),
      shelter: USUAL_SHELTER_OPTIONS,
      fullEffect: 1.2,
    };
    const one = await runStepYears(runner, request);
    const three = await runStepYears({ ...runner, threads: 3 }, request);
    expect(three).toEqual(one);
  });

  test('stops when it is told to', async () => {
    const document = northWind([tree('a', [0, 0]), net({})]);
    const stop = new AbortController();
    const stepping = runStepYears(
      runner,
      { document, options: optionsOf(document), shelter: USUAL_SHELTER_OPTIONS, fullEffect: 1.2 },
      { signal: stop.signal, onProgress: () => stop.abort() },
    );
    await expect(stepping).rejects.toMatchObject({ code: 'cancelled' });
  });
});
