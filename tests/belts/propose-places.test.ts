import { describe, expect, test } from 'vitest';
import { beltOptions, excludeEachOther } from '../../src/belts/propose-options.ts';
import type { ProposeSetting } from '../../src/belts/propose-setting.ts';
import { beltPlants } from '../../src/belts/propose-species.ts';
import type { BeltOption } from '../../src/belts/propose-types.ts';
import { type LonLat, toLonLat } from '../../src/geo/frame.ts';
import { ringToLocal } from '../../src/geo/rasterise.ts';
import type { SiteFeature } from '../../src/site/document.ts';
import { distanceToLineM, isInside, type XY } from '../../src/site/plane-geometry.ts';
import type { FieldFeature } from '../../src/site/records/field.ts';
import { at, oddField, settingOf } from './proposed-field.ts';

const field = (setting: ProposeSetting) => setting.document.features[0] as FieldFeature;
const optionsOf = (setting: ProposeSetting): BeltOption[] =>
  beltOptions({
    document: setting.document,
    frame: setting.scene.frame,
    field: field(setting),
    wish: setting.wish,
    moment: setting.scene,
    windsFromRad: [(270 * Math.PI) / 180, 0],
    refused: setting.refused,
  });
/** Points of a belt's middle line, every half metre. */
const points = ({ place: { line } }: BeltOption): XY[] =>
  line.slice(1).flatMap((b, i) => {
    const a = line[i];
    const steps = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) * 2);
    return Array.from(
      { length: steps + 1 },
      (_, k): XY => [a[0] + ((b[0] - a[0]) * k) / steps, a[1] + ((b[1] - a[1]) * k) / steps],
    );
  });
const localOf = (setting: ProposeSetting, id: string): XY[] => {
  const { geometry } = setting.document.features.find((one) => one.id === id)!;
  const ring = geometry.type === 'Polygon' ? geometry.coordinates[0] : (geometry.coordinates as number[][]);
  return ringToLocal(setting.scene.frame, ring as unknown as LonLat[]) as unknown as XY[];
};

const setting = settingOf(oddField());
const options = optionsOf(setting);
/** Sampling by the metre leaves at most half a metre. */
const SLACK_M = 0.55;

describe('where belts are proposed', () => {
  test('all of a belt lies on the field, a metre of ground between it and the edge', () => {
    const ring = localOf(setting, 'odd');
    for (const option of options)
      for (const point of points(option)) {
        expect(isInside(point, [ring])).toBe(true);
        expect(distanceToLineM(point, ring)).toBeGreaterThan(option.plant.widthM / 2 + 1 - 0.1);
      }
  });

  test('drain, gate and barn keep their distance, a thirsty species a longer one from the drain', () => {
    const drain = localOf(setting, 'drain');
    const gate = localOf(setting, 'gate');
    const barn = localOf(setting, 'barn');
    for (const option of options) {
      const { widthM, matureHeightM, thirsty } = option.plant;
      for (const point of points(option)) {
        const away = Math.max(4 + widthM / 2, thirsty ? 0.75 * matureHeightM : 0);
        expect(distanceToLineM(point, drain)).toBeGreaterThan(away - SLACK_M);
        expect(isInside(point, [gate])).toBe(false);
        expect(distanceToLineM(point, gate)).toBeGreaterThan(4 + widthM / 2 - SLACK_M);
        expect(distanceToLineM(point, barn)).toBeGreaterThan(
          (thirsty ? 1.25 : 0.75) * matureHeightM - SLACK_M,
        );
      }
    }
  });

  test('a belt, a wall, a tree and a patch that stand or are planned are kept clear of', () => {
    const more = [
      ['wall', 'LineString', [at(-60, -45), at(50, -52)], { kind: 'wall', heightM: 1.5 }],
      ['belt', 'LineString', [at(-50, 40), at(-5, 42)], { kind: 'belt', status: 'planned', widthM: 4 }],
      ['tree', 'Point', at(40, -30), { kind: 'tree', status: 'existing', heightM: 9, crownRadiusM: 4 }],
    ].map(([id, type, coordinates, properties]) => ({
      type: 'Feature',
      id,
      geometry: { type, coordinates },
      properties,
    })) as unknown as SiteFeature[];
    const full = settingOf(oddField(more));
    const found = optionsOf(full);
    expect(found.length).toBeGreaterThan(0);
    const [wall, belt] = [localOf(full, 'wall'), localOf(full, 'belt')];
    const [tree] = ringToLocal(full.scene.frame, [at(40, -30)]);
    for (const option of found)
      for (const point of points(option)) {
        const half = option.plant.widthM / 2;
        expect(distanceToLineM(point, wall)).toBeGreaterThan(half + 1 - SLACK_M);
        expect(distanceToLineM(point, belt)).toBeGreaterThan(half + 1 + 2 - SLACK_M);
        expect(Math.hypot(point[0] - tree[0], point[1] - tree[1])).toBeGreaterThan(half + 4 - SLACK_M);
      }
  });

  test('a refused line is not proposed again, of no species and no length', () => {
    const refusedOption = options.find(({ place }) => place.where === 'edge')!;
    const refused = [refusedOption.place.line.map((one) => toLonLat(setting.scene.frame, one))];
    for (const option of optionsOf({ ...setting, refused }))
      for (const point of points(option))
        expect(distanceToLineM(point, refusedOption.place.line as unknown as XY[])).toBeGreaterThan(5.4);
  });

  test('the same stretch, or lines that cross, exclude each other; halves of a side do not', () => {
    const runOf = ({ place, plant }: BeltOption) =>
      options.filter((one) => one.place.run === place.run && one.plant === plant);
    const side = options.map(runOf).find((parts) => parts.length === 3)!;
    const [whole, first, second] = side;
    expect(excludeEachOther(whole, first)).toBe(true);
    expect(excludeEachOther(first, second)).toBe(false);
    const across = options.filter(({ place }) => place.where === 'across');
    const facing = new Set(across.map(({ place }) => Math.round(place.facingDeg)));
    expect(facing.size).toBe(2);
  });

  test('long enough to be worth it', () => {
    for (const { place, plant } of options)
      expect(place.lengthM).toBeGreaterThanOrEqual(Math.max(12, 2 * plant.heightM));
  });
});

describe('which species are tried', () => {
  test('tall to low, leaf-dropping and evergreen, none that is invasive or deadly', () => {
    for (const year of [5, 12, 25]) {
      const plants = beltPlants(setting.document, year, 'growing');
      expect(plants.length).toBe(6);
      expect(new Set(plants.map(({ species }) => species)).size).toBe(6);
      expect(plants.filter(({ porosityOn, porosityOff }) => porosityOff > porosityOn + 0.1)).toHaveLength(3);
      expect(plants[0].heightM).toBeGreaterThan(2 * plants[5].heightM);
      for (const { species, cautions } of plants) {
        expect(cautions.join(' ')).not.toMatch(/invasive|deadly|poison/);
        expect(species).not.toMatch(/Taxus|Robinia|laurocerasus|Fraxinus/);
      }
    }
  });
});
