import { describe, expect, it } from 'vitest';
import { beltFacts } from '../../src/belts/belt-facts.ts';
import { isBeltLike } from '../../src/belts/belt-shape.ts';
import { fallStrip } from '../../src/belts/fall-strip.ts';
import { polygonAreaM2 } from '../../src/geo/geodesic.ts';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { runBeltWhen } from '../../src/jobs/run-belt-when.ts';
import { runBridges } from '../../src/jobs/run-bridges.ts';
import { runFieldCut } from '../../src/jobs/run-field-cut.ts';
import { runInsurance } from '../../src/jobs/run-insurance.ts';
import { deleteFeatures } from '../../src/site/actions/delete-feature.ts';
import { setProperties } from '../../src/site/actions/set-properties.ts';
import { belted, fieldOf, optionsOf, READING } from './belted-site.ts';

const runner = createLocalRunner();
const site = belted();
const options = optionsOf(site);
const field = fieldOf(site);
const beltOf = (name: string) =>
  site.features.filter(isBeltLike).find(({ properties }) => properties.name === name)!;
const request = { document: site, options, field, readingHeightM: 1.5 };

describe('belts about a field', () => {
  const facts = new Map(beltFacts(site, options).map((each) => [each.label, each]));

  it('stand on the side from which their winds come', () => {
    expect(facts.get('West edge')!.side!.facingDeg).toBeCloseTo(270, -1);
    expect(Math.cos((facts.get('North belt')!.side!.facingDeg * Math.PI) / 180)).toBeGreaterThan(0.99);
    // All the wind is from the west.
    expect(facts.get('West edge')!.side!.growing.share).toBeCloseTo(1, 3);
    expect(facts.get('North belt')!.side!.growing.share).toBe(0);
    expect(facts.get('Far belt')!.side).toBeNull();
  });

  it('are as long as drawn, and open between their ends', () => {
    const { lengthM, gaps, carriedOnBy } = facts.get('North belt')!;
    expect(lengthM).toBeCloseTo(100, 0);
    // Its west end lies 10 m east of the edge's middle line, whose end it faces.
    expect(gaps).toHaveLength(1);
    expect(gaps[0].to).toBe('West edge');
    expect(gaps[0].widthM).toBeGreaterThan(5);
    expect(gaps[0].widthM).toBeLessThan(12);
    expect(gaps[0].endDeg).toBeCloseTo(270, -1);
    expect(carriedOnBy.map(({ label }) => label)).toContain('West edge');
  });

  it('are rows of one belt side by side, not end to end', () => {
    expect(facts.get('Alder belt')!.otherRows).toEqual(['Oak belt']);
    const { id } = beltOf('Oak belt');
    const onward = site.features.map((feature) =>
      feature.id === id && feature.geometry.type === 'LineString'
        ? {
            ...feature,
            geometry: {
              ...feature.geometry,
              coordinates: feature.geometry.coordinates.map(([lon, lat]) => [lon, lat + 0.0009]),
            },
          }
        : feature,
    );
    const along = beltFacts({ ...site, features: onward } as typeof site, options);
    expect(along.find(({ label }) => label === 'Alder belt')!.otherRows).toEqual([]);
  });

  it('are mixed of each species once, whichever of its names the file has', () => {
    const { id } = beltOf('Alder belt');
    const mixed = (alsoSpecies: string[]) =>
      beltFacts(setProperties(site, [id], { alsoSpecies }), options).find((each) => each.id === id)!.mixture;
    expect(mixed(['alnus CORDATA', 'Alnus incana'])).toEqual({
      names: ['Italian alder', 'grey alder'],
      oneGenus: true,
    });
    expect(mixed(['Alnus incana', 'Corylus avellana'])).toEqual({
      names: ['Italian alder', 'grey alder', 'hazel'],
      oneGenus: false,
    });
    const grown = (alsoSpecies?: string[]) =>
      beltFacts(setProperties(site, [id], { alsoSpecies }), options).find((each) => each.id === id)!;
    const [alone, with_] = [grown(), grown(['Quercus robur'])];
    expect({ ...with_, mixture: null }).toEqual({ ...alone, mixture: null });
  });

  it('fall as far as they are tall', () => {
    const strip = fallStrip(site, beltOf('West edge'), options.frame, { ...options, year: 0 })!;
    expect(strip.heightM).toBe(16);
    const { area } = strip;
    if (area.type !== 'Polygon') throw new Error('one strip expected');
    // 100 m long, 4 m wide: a capsule of radius 18 m.
    const wantedM2 = 2 * 18 * 100 + Math.PI * 18 ** 2;
    const foundM2 = polygonAreaM2(
      area.coordinates.map((ring) => ring.map(([lon, lat]) => [lon, lat] as const)),
    );
    expect(foundM2 / wantedM2).toBeGreaterThan(0.99);
    expect(foundM2 / wantedM2).toBeLessThan(1.001);
    expect(strip.within).toEqual(['Herb ground']);
  });
});

describe('a site with an edge felled', () => {
  it('is the site drawn without it, from the year of felling on', async () => {
    const edge = beltOf('West edge');
    const felled = { ids: [edge.id], fromYear: 10 };
    const without = deleteFeatures(site, [edge.id]);
    const cut = (document: typeof site, part: object) =>
      runFieldCut(runner, document, { ...options, ...part }, field, READING);
    expect(await cut(site, { year: 10, felled })).toEqual(await cut(without, { year: 10 }));
    expect(await cut(site, { year: 9, felled })).toEqual(await cut(site, { year: 9 }));
    expect((await cut(site, { year: 9 })).meanCut).toBeGreaterThan(
      (await cut(site, { year: 10, felled })).meanCut,
    );
  });
});

describe('the years of a planned belt', () => {
  it('protect sooner the faster it grows, and never lose ground', async () => {
    const when = await runBeltWhen(runner, request, beltOf('Alder belt'));
    expect(when.protects).toBe(true);
    const { slow, usual, fast } = when.usefulFrom;
    expect(fast!).toBeLessThanOrEqual(usual!);
    expect(usual!).toBeLessThanOrEqual(slow!);
    for (const shares of Object.values(when.protectedShare))
      for (let i = 1; i < shares.length; i++) expect(shares[i]).toBeGreaterThanOrEqual(shares[i - 1] - 0.02);
    expect(when.watchedM).toBeGreaterThan(80);
  });

  it('are bridged by a net that gains, until the belt does as much', async () => {
    const oak = beltOf('Oak belt');
    const when = await runBeltWhen(runner, request, oak);
    const offers = await runBridges(runner, request, oak, when, READING);
    const net = offers.find(({ kind }) => kind === 'net')!;
    expect(net.gains[0].protectedWith).toBeGreaterThan(net.gains[0].protectedWithout);
    expect(net.drawn.properties).toMatchObject({ kind: 'wall', fromYear: site.site.baseYear });
    expect(net.toYear).toBeLessThan(when.usefulFrom.slow ?? 40);
    // A faster species stands in for slow oaks.
    const row = offers.find(({ kind }) => kind === 'nurse row')!;
    expect(row.gains.some((gain) => gain.protectedWith > gain.protectedWithout + 0.05)).toBe(true);
  });
});

describe('insurance for a borrowed edge', () => {
  it('is planted by the last year in which the field keeps what is chosen: that year does, the next does not', async () => {
    const edge = beltOf('West edge');
    // The oaks would stand in for it.
    const alone = deleteFeatures(site, [beltOf('Oak belt').id]);
    const wish = {
      edgeId: edge.id,
      felledInYear: 12,
      leastCutShare: 0.45,
      insurer: { beltId: beltOf('Alder belt').id },
    };
    const { latest, needless } = await runInsurance(runner, { ...request, document: alone }, wish, READING);
    expect(needless).toBe(false);
    expect(latest.slow!).toBeLessThanOrEqual(latest.usual!);
    expect(latest.usual!).toBeLessThanOrEqual(latest.fast!);
    const lowest = async (plantedYear: number) => {
      const planted = setProperties(alone, [beltOf('Alder belt').id], {
        plantedYear: site.site.baseYear + plantedYear,
      });
      const cuts = [12, 13, 14, 16, 20].map((year) =>
        runFieldCut(
          runner,
          planted,
          { ...options, year, felled: { ids: [edge.id], fromYear: 12 } },
          field,
          READING,
        ),
      );
      return Math.min(...(await Promise.all(cuts)).map(({ meanCut }) => meanCut));
    };
    expect(await lowest(latest.usual!)).toBeGreaterThanOrEqual(0.45);
    expect(await lowest(latest.usual! + 1)).toBeLessThan(0.45);
  });
});
