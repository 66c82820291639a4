import { describe, expect, it } from 'vitest';
import { toLocal } from '../../src/geo/frame.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { shelterScene } from '../../src/scene/build-scene.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';

const at = (eastM: number, northM: number): [number, number] => [
  -64.5 + eastM / 78_700,
  45.1 + northM / 111_100,
];
const site = (features: unknown[]): SiteDocument => ({
  type: 'FeatureCollection',
  site: { formatVersion: 1, name: 'Test', timeZone: 'America/Halifax', baseYear: 2027 },
  features: features as SiteFeature[],
});
const wall = (id: string, properties: object) => ({
  type: 'Feature',
  id,
  geometry: { type: 'LineString', coordinates: [at(-60, 10), at(60, 10)] },
  properties: { kind: 'wall', ...properties },
});

/** Mean share of the year's open wind on a square of 40 m about the middle. */
function shareIn(document: SiteDocument, year: number): { share: number; barriers: number; trees: number } {
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  const moment = { year, layout: null, pace: 'usual' as const, frame, ground, weather: null };
  const { scene } = shelterScene(document, moment);
  const [x, y] = toLocal(frame, at(0, 0));
  const grid = { columns: 10, rows: 10, cellM: 4, westM: x - 20, northM: y + 20 };
  const asked = { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS };
  const year100 = runToEnd(computeShelter({ ...asked, scene, grid })).windShare.subarray(200);
  return {
    share: year100.reduce((sum, each) => sum + each, 0) / 100,
    barriers: scene.barriers.length,
    trees: scene.crowns.count,
  };
}

describe('shelter through the years', () => {
  it('a net shelters from its first to its last year and in no other', () => {
    const document = site([wall('net', { heightM: 4, opticalPorosity: 0.5, fromYear: 2029, toYear: 2032 })]);
    for (const [year, there] of [
      [0, false],
      [1, false],
      [2, true],
      [5, true],
      [6, false],
      [40, false],
    ] as const) {
      const { share, barriers } = shareIn(document, year);
      expect(barriers, `year ${year}`).toBe(there ? 1 : 0);
      if (there) expect(share).toBeLessThan(0.95);
      else expect(share).toBe(1);
    }
  });
  it('a fence without years always stands, one with a first year alone from then on', () => {
    const fence = site([wall('fence', { heightM: 3, opticalPorosity: 0.5 })]);
    expect(shareIn(fence, 0).share).toBe(shareIn(fence, 40).share);
    const later = site([wall('later', { heightM: 3, opticalPorosity: 0.5, fromYear: 2030 })]);
    expect(shareIn(later, 2).share).toBe(1);
    expect(shareIn(later, 40).share).toBe(shareIn(fence, 40).share);
  });
  it('a garden of 200 trees becomes its own shelter as it grows', () => {
    const trees = Array.from({ length: 200 }, (_, i) => ({
      type: 'Feature',
      id: `t${i}`,
      geometry: { type: 'Point', coordinates: at(((i % 20) - 9.5) * 7, (Math.floor(i / 20) - 4.5) * 7) },
      properties: { kind: 'tree', species: 'Malus domestica', plantedYear: 2027 },
    }));
    const shares = [0, 5, 10, 20, 40].map((year) => shareIn(site(trees), year).share);
    console.log(`share of open wind in year 0, 5, 10, 20, 40: ${shares.map((s) => s.toFixed(2)).join(', ')}`);
    expect(shares[0]).toBeGreaterThan(0.95);
    shares.reduce((before, share) => {
      expect(share).toBeLessThanOrEqual(before);
      return share;
    });
    expect(shares[4]).toBeLessThan(0.7);
    expect(shares[4]).toBeGreaterThan(0.25);
  });
});
