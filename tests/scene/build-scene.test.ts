import { describe, expect, it } from 'vitest';
import { CROWN_BASE, CROWN_RADIUS, CROWN_STRIDE, CROWN_TOP } from '../../src/crowns/crown-set.ts';
import { PRISM_DEPTH_ON, PRISM_TOP } from '../../src/crowns/prism-set.ts';
import { lightScene, shelterScene } from '../../src/scene/build-scene.ts';
import { growPlan } from '../../src/scene/grow-plan.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';

const at = (eastM: number, northM: number): [number, number] => [
  -64.5 + eastM / 78_700,
  45.1 + northM / 111_100,
];

function site(features: unknown[], more: object = {}): SiteDocument {
  return {
    type: 'FeatureCollection',
    site: { formatVersion: 1, name: 'Test', timeZone: 'America/Halifax', baseYear: 2027, ...more },
    features: features as SiteFeature[],
  };
}
const tree = (id: string, properties: object, place = at(0, 0)) => ({
  type: 'Feature',
  id,
  geometry: { type: 'Point', coordinates: place },
  properties: { kind: 'tree', ...properties },
});
const belt = (id: string, properties: object) => ({
  type: 'Feature',
  id,
  geometry: { type: 'LineString', coordinates: [at(-30, 10), at(30, 10)] },
  properties: { kind: 'belt', ...properties },
});

function scenes(document: SiteDocument, year: number, layout: string | null = null) {
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  const options = { year, layout, pace: 'usual' as const, frame, ground, weather: null };
  return { light: lightScene(document, options), shelter: shelterScene(document, options) };
}

describe('a site in a year', () => {
  it('leaves out what is not planted yet and what is gone', () => {
    const document = site([
      tree('planted', { species: 'Juglans regia', plantedYear: 2030 }),
      tree('felled', { heightM: 12, removedYear: 2035 }),
    ]);
    const standing = (year: number) => scenes(document, year).light.things.map((thing) => thing.id);
    expect(standing(0)).toEqual(['felled']);
    expect(standing(5)).toEqual(['planted', 'felled']);
    expect(standing(8)).toEqual(['planted']);
  });

  it('keeps a tree without a species at its measured size', () => {
    const document = site([tree('t', { heightM: 12, crownRadiusM: 4, crownBaseM: 2 })]);
    const { crowns, leaf } = scenes(document, 20).light.scene;
    expect(crowns.values[CROWN_TOP]).toBe(12);
    expect(crowns.values[CROWN_RADIUS]).toBe(4);
    expect(crowns.values[CROWN_BASE]).toBe(2);
    expect(leaf.phaseCount).toBe(1);
    expect(leaf.leafShare[0]).toBe(1);
  });

  it('takes the features of the chosen layout over the common ones', () => {
    const document = site([
      tree('common', { heightM: 5 }),
      tree('only-in-b', { heightM: 5, layout: 'B' }, at(9, 0)),
    ]);
    expect(scenes(document, 0).light.scene.crowns.count).toBe(1);
    expect(scenes(document, 0, 'B').light.scene.crowns.count).toBe(2);
    expect(scenes(document, 0, 'A').light.scene.crowns.count).toBe(1);
  });

  it('gives a belt the depth that its porosity and width mean, and the same porosity to the wind', () => {
    const document = site([
      belt('b', { heightM: 10, widthM: 4, opticalPorosityLeafOn: 0.3, opticalPorosityLeafOff: 0.6 }),
    ]);
    const { light, shelter } = scenes(document, 0);
    const { prisms, leaf } = light.scene;
    expect(Math.exp(-prisms.values[PRISM_DEPTH_ON] * 4)).toBeCloseTo(0.3, 9);
    expect(prisms.values[PRISM_TOP]).toBe(10);
    expect(shelter.scene.barriers[0]).toMatchObject({ porosityOn: 0.3, porosityOff: 0.6, widthM: 4 });
    // A leafless porosity makes a belt without a species deciduous.
    expect(leaf.classCount).toBe(2);
    expect(prisms.leafClass[0]).toBe(1);
    expect(new Set(leaf.phaseOfDay).size).toBe(leaf.phaseCount);
  });

  it('names what it had to assume', () => {
    expect(scenes(site([tree('t', {})]), 0).light.assumed.join()).toMatch(/sunshine 0.45/);
    const sunny = site([tree('t', {})], { sunshineShareByMonth: new Array(12).fill(0.5) });
    expect(scenes(sunny, 0).light.assumed).toEqual([]);
  });

  it('shows the slow-to-fast band around what is drawn', () => {
    const document = site([
      tree('t', { species: 'Alnus cordata', plantedYear: 2027, tag: 'A1' }),
      belt('b', { heightM: 6 }),
    ]);
    const { things } = growPlan(document, {
      year: 10,
      layout: null,
      pace: 'usual',
      frame: siteFrame(document),
    });
    const [alder, hedge] = things;
    expect(alder.label).toBe('Italian alder A1');
    expect(alder.heightBandM[0]).toBeLessThan(alder.heightM);
    expect(alder.heightBandM[1]).toBeGreaterThan(alder.heightM);
    expect(hedge.heightBandM).toEqual([6, 6]);
    expect(hedge.footprint[0]).toHaveLength(5);
  });

  it('has as many crowns in its arrays as it counts', () => {
    const { crowns } = scenes(site([tree('a', {}), tree('b', {}, at(5, 5))]), 0).light.scene;
    expect(crowns.values).toHaveLength(crowns.count * CROWN_STRIDE);
  });
});
