/**
 * Beside a wall without end: what is left of an even sky is (1 + cos a) / 2 at an angle a up to the wall's top (Dozier &
 * Frew 1990, level ground), and wind square to it is left by the barrier function of WEPS.
 */
import { expect, test } from 'vitest';
import type { EdgeFeature } from '../../../src/choose/edge-types.ts';
import { createLocalRunner } from '../../../src/jobs/local-runner.ts';
import { runEdgeProfile } from '../../../src/jobs/run-edge-profile.ts';
import { featuresOfKind } from '../../../src/site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../../../src/site/document.ts';
import { USUAL_SHELTER_OPTIONS } from '../../../src/wind/shelter-guesses.ts';
import { frictionShare } from '../../../src/wind/weps.ts';
import { optionsOf } from '../../years/years-site.ts';

const HEIGHT_M = 10;
/** Width that the scene gives a wall. */
const WALL_WIDTH_M = 0.2;
// On the middle meridian of UTM zone 20, where grid north is true north.
const at = (eastM: number, northM: number): [number, number] => [-63 + eastM / 78_846, 45 + northM / 111_130];
const feature = (id: string, geometry: unknown, properties: object): SiteFeature =>
  ({ type: 'Feature', id, geometry, properties }) as unknown as SiteFeature;

const wall = feature(
  'wall',
  { type: 'LineString', coordinates: [at(0, -3000), at(0, 0), at(0, 3000)] },
  { kind: 'wall', heightM: HEIGHT_M, opticalPorosity: 0 },
);
const field = feature(
  'field',
  { type: 'Polygon', coordinates: [[at(0, -15), at(90, -15), at(90, 15), at(0, 15), at(0, -15)]] },
  { kind: 'field', name: 'Lee' },
);
const document: SiteDocument = {
  type: 'FeatureCollection',
  site: {
    formatVersion: 1,
    name: 'Wall',
    timeZone: 'America/Halifax',
    baseYear: 2027,
    // Always overcast, from an even sky.
    sunshineShareByMonth: new Array(12).fill(0),
    wind: { heightM: 10, sectors: [{ fromDeg: 270, frequency: 1, meanSpeedMps: 5 }] },
  },
  features: [wall, field],
};

test('the profile is the analytic light and the WEPS curve', async () => {
  const profile = await runEdgeProfile(createLocalRunner(), {
    document,
    options: optionsOf(document),
    edge: wall as EdgeFeature,
    fields: featuresOfKind(document.features, 'field'),
    reading: { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS },
    lightHeightM: 0,
    needs: { sunLight: 0.68, shadeLight: 0.3, windCut: 0.3 },
  });
  expect(profile?.sides).toHaveLength(1);
  const [side] = profile!.sides;
  expect(side.facingDeg).toBeCloseTo(90, 0);
  for (const { heightM, bins, year } of side.years) {
    expect(heightM).toBe(HEIGHT_M);
    expect(bins.length).toBeGreaterThan(30);
    const off = { light: 0, wind: 0 };
    for (const { fromM, toM, atM, lightShare, windCut } of bins) {
      // Means over as much ground as the bin has, about its mean distance, in steps too small to matter.
      const steps = Array.from({ length: 50 }, (_, k) => atM + ((k + 0.5) / 50 - 0.5) * (toM - fromM));
      const mean = (of: (dM: number) => number) => steps.reduce((sum, d) => sum + of(d), 0) / steps.length;
      // The near side is where light ends; wind is counted from the middle of the wall.
      const light = mean((d) => (1 + d / Math.hypot(d, HEIGHT_M)) / 2);
      const wind = mean((d) => frictionShare(0, (d + WALL_WIDTH_M / 2) / HEIGHT_M, WALL_WIDTH_M / HEIGHT_M));
      off.light = Math.max(off.light, Math.abs(lightShare - light));
      off.wind = Math.max(off.wind, Math.abs(1 - windCut - wind));
    }
    console.log(`year ${year}: light off by ${off.light.toFixed(4)}, wind by ${off.wind.toFixed(4)} at most`);
    expect(off.light).toBeLessThan(0.005);
    expect(off.wind).toBeLessThan(0.005);
  }
});
