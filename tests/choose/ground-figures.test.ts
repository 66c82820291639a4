// Slope and aspect, exposure and the run of water are checked in tests/truth/geo and tests/geo; here: over a field.
import { describe, expect, it } from 'vitest';
import { beltGrowth, beltNeededM } from '../../src/choose/belt-needed.ts';
import { coldAirScene } from '../../src/choose/cold-air.ts';
import { groundFigures, wetnessOf } from '../../src/choose/ground-figures.ts';
import { ageAtHeight } from '../../src/growth/height-curve.ts';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { findSpecies } from '../../src/plants/find-species.ts';
import type { SiteFeature } from '../../src/site/document.ts';
import type { FieldFeature } from '../../src/site/records/field.ts';
import { at, line, northWind, optionsOf } from '../years/years-site.ts';

const field = {
  type: 'Feature',
  id: 'f',
  geometry: {
    type: 'Polygon',
    coordinates: [[at(-50, -40), at(50, -40), at(50, 40), at(-50, 40), at(-50, -40)]],
  },
  properties: { kind: 'field', name: 'F' },
} as FieldFeature;

async function figuresOf(more: readonly SiteFeature[], plane?: { fallDeg: number; towardDeg: number }) {
  const document = northWind([field, ...more], plane ? { terrainPlane: plane } : {});
  const options = optionsOf(document);
  const cold = await createLocalRunner().run('cold-air', coldAirScene(document, options));
  return groundFigures(document, field, options.frame, options.ground, cold, wetnessOf(cold), null);
}
const path = (id: string, northM: number, properties: object = {}) =>
  line(id, northM, { kind: 'path', ...properties });

describe('how the ground of a field lies', () => {
  it('is the plane it lies on, by slope and by the way it falls', async () => {
    const found = await figuresOf([], { fallDeg: 5, towardDeg: 200 });
    expect(found.slopeDeg).toBeCloseTo(5, 2);
    expect(found.aspectDeg).toBeCloseTo(200, 0);
    expect(found.cold.hollowShare).toBe(0);
  });

  it('falls nowhere where it is level, and has its area on the ellipsoid', async () => {
    const found = await figuresOf([]);
    expect(found.aspectDeg).toBeNull();
    expect(found.slopeDeg).toBeCloseTo(0, 6);
    // The helper's metres are good to a thousandth.
    expect(found.areaM2 / 8000).toBeCloseTo(1, 2);
  });

  it('is as far from the nearest path and water as a straight line from its edge; nothing drawn is not known', async () => {
    expect(await figuresOf([])).toMatchObject({ toAccessM: null, toWaterM: null });
    const found = await figuresOf([
      path('far', 300),
      path('near', 90),
      path('lane', -70, { name: 'Mill brook' }),
    ]);
    // A brook is no way in, though it is drawn as a line.
    expect(found.toAccessM).toBeCloseTo(50, 0);
    expect(found.toWaterM).toBeCloseTo(30, 0);
    expect((await figuresOf([path('through', 0)])).toAccessM).toBe(0);
  });

  it('has water where it is said, whatever it is called', async () => {
    const said = await figuresOf([
      path('walk', 90, { name: 'Pond walk', water: 'no' }),
      path('ford', -70, { kind: 'keepOut', name: 'The old ford', water: 'yes' }),
    ]);
    expect(said.toAccessM).toBeCloseTo(50, 0);
    expect(said.toWaterM).toBeCloseTo(30, 0);
  });
});

describe('the belt a field needs', () => {
  it('is one for every eighty metres of depth that nothing shelters, and none where it were shorter than tall', () => {
    expect(beltNeededM(10_000, 0)).toBeCloseTo(125, 9);
    expect(beltNeededM(10_000, 0.5)).toBeCloseTo(62.5, 9);
    expect(beltNeededM(10_000, 0.95)).toBe(0);
  });

  it('takes the years that the middle of the shelter trees take to eight metres', () => {
    const growth = beltGrowth(northWind([]));
    expect(growth?.quickYears).toBeLessThanOrEqual(growth?.years ?? 0);
    expect(growth?.years).toBeLessThanOrEqual(growth?.slowYears ?? 0);
    const alder = findSpecies('Alnus cordata', undefined)!.curve;
    const alone = ageAtHeight(alder, 8) - ageAtHeight(alder, 0.6);
    expect(growth?.quickYears).toBeLessThanOrEqual(Math.ceil(alone) + 2);
    const poor = beltGrowth(northWind([], { vigour: 0.6 }));
    expect(poor?.years).toBeGreaterThan(growth?.years ?? 0);
  });
});
