import { describe, expect, it } from 'vitest';
import { lineLengthM } from '../../src/geo/geodesic.ts';
import { costsOf, pricesMissing } from '../../src/layouts/costs.ts';
import { holdingsOf } from '../../src/layouts/holdings.ts';
import { differInNothing, whatDiffers } from '../../src/layouts/what-differs.ts';
import { copyLayout } from '../../src/site/actions/copy-layout.ts';
import { deleteFeatures } from '../../src/site/actions/delete-feature.ts';
import { moveFeatures } from '../../src/site/actions/move-feature.ts';
import { setProperties } from '../../src/site/actions/set-properties.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { at, box, feature, line, siteOf } from '../site/small-site.ts';
import { randomLayouts, shuffled } from './random-layouts.ts';

const SEEDS = Array.from({ length: 20 }, (_, i) => i + 1);
const marks = (features: readonly SiteFeature[]) => features.map(({ id }) => String(id)).sort();

describe('a layout that changes nothing', () => {
  it.each(SEEDS)('differs in nothing, whatever the order of the file (seed %i)', (seed) => {
    const document = shuffled(copyLayout(randomLayouts(seed), 'A', 'B'), seed);
    expect(differInNothing(whatDiffers(document, 'A', 'B'))).toBe(true);
    expect(holdingsOf(document, 'A')).toEqual({ ...holdingsOf(document, 'B'), ...lengthsOf(document, 'A') });
    expect(costsOf(holdingsOf(document, 'B'), document.site.prices).total).toBeCloseTo(
      costsOf(holdingsOf(document, 'A'), document.site.prices).total!,
      6,
    );
  });

  /** Sums of lengths hang on the order in which they are added, in the last digit. */
  function lengthsOf(document: SiteDocument, layout: string) {
    const { beltM, wallM, planned } = holdingsOf(document, layout);
    const other = holdingsOf(document, 'B');
    expect(other.beltM).toBeCloseTo(beltM, 6);
    expect(other.wallM).toBeCloseTo(wallM, 6);
    expect(other.planned.beltM).toBeCloseTo(planned.beltM, 6);
    expect(other.planned.trees).toBe(planned.trees);
    return { beltM, wallM, planned };
  }
});

describe('a layout that is changed', () => {
  it.each(SEEDS)('differs in what was changed, seen from either side (seed %i)', (seed) => {
    const copied = copyLayout(randomLayouts(seed), 'A', 'B');
    const own = copied.features.filter(({ properties }) => properties.layout === 'B');
    const gone = own[seed % own.length].id;
    const document = shuffled(deleteFeatures(copied, [gone]), seed);
    const one = whatDiffers(document, 'A', 'B');
    const other = whatDiffers(document, 'B', 'A');
    expect([one.onlyA.length, one.onlyB.length, one.changed.length]).toEqual([1, 0, 0]);
    expect(marks(other.onlyB)).toEqual(marks(one.onlyA));
    expect([other.onlyA.length, other.changed.length]).toEqual([0, 0]);
  });

  it('knows a thing again by its tag, its name or its place, and says what is other', () => {
    const start = siteOf([
      feature('t1', { kind: 'tree', tag: 'N1', species: 'Juglans regia', layout: 'A' }, at(0, 0)),
      feature('b1', { kind: 'belt', name: 'West belt', layout: 'A' }, line([0, 0], [0, 50])),
      feature('p1', { kind: 'patch', layout: 'A' }, box(0, 0, 9, 9)),
    ]);
    let document = copyLayout({ ...start, site: { ...start.site, layouts: [{ name: 'A' }] } }, 'A', 'B');
    const [tree, belt, patch] = document.features
      .filter(({ properties }) => properties.layout === 'B')
      .map(({ id }) => id);
    document = moveFeatures(document, [tree], 3, 0);
    document = setProperties(document, [belt], { plantedYear: 2030, widthM: 4 });
    document = setProperties(document, [patch], { layer: 'shrub' });
    const { onlyA, onlyB, changed } = whatDiffers(document, 'A', 'B');
    expect([onlyA, onlyB]).toEqual([[], []]);
    expect(changed.map(({ a, moved, properties }) => [a.id, moved, properties])).toEqual([
      ['t1', true, []],
      ['b1', false, ['plantedYear', 'widthM']],
      ['p1', false, ['layer']],
    ]);
  });

  it('is compared with what is common alone: all of it is its own', () => {
    const document = randomLayouts(3);
    expect(whatDiffers(document, null, 'A').onlyB.length).toBe(document.features.length - 1);
  });
});

describe('what a layout holds and costs', () => {
  const run = line([0, 0], [0, 60], [40, 60]);
  const document = siteOf(
    [
      feature('t0', { kind: 'tree', status: 'planned', species: 'Malus domestica' }, at(0, 0)),
      feature('t1', { kind: 'tree', status: 'planned', species: 'Malus domestica', layout: 'A' }, at(9, 0)),
      feature('t2', { kind: 'tree', species: 'Malus domestica', layout: 'A' }, at(18, 0)),
      feature('t3', { kind: 'tree', status: 'planned', plantedYear: 2031, layout: 'A' }, at(27, 0)),
      feature('b1', { kind: 'belt', status: 'planned', layout: 'A' }, run),
      feature('n1', { kind: 'wall', fromYear: 2027, layout: 'A' }, line([0, 0], [10, 0])),
      feature('n0', { kind: 'wall', layout: 'A' }, line([0, 5], [10, 5])),
    ],
    { layouts: [{ name: 'A' }] },
  );
  const holdings = holdingsOf(document, 'A');

  it('counts its own things alone, trees by species, lines by their length on the ground', () => {
    expect(holdings.trees).toEqual([
      { species: '', commonName: 'No species given', trees: 1 },
      { species: 'Malus domestica', commonName: 'apple', trees: 2 },
    ]);
    expect(holdings.beltM).toBeCloseTo(lineLengthM(run), 9);
    expect(holdings.beltM).toBeCloseTo(100, 1);
    expect(holdings.wallM).toBeCloseTo(20, 1);
    expect(holdings.treesPlanted).toEqual([2027, 2031]);
    expect(holdings.planned.trees).toBe(2);
    expect(holdings.planned.wallM).toBeCloseTo(10, 1);
  });

  it('costs what is planned, by the person’s own prices; without a price there is no cost', () => {
    const full = costsOf(holdings, { perTree: 20, perBeltM: 2.5, perWallM: 10 });
    expect(full.parts.trees).toBe(40);
    expect(full.parts.belts).toBeCloseTo(250, 0);
    expect(full.parts.walls).toBeCloseTo(100, 0);
    expect(full.total).toBeCloseTo(390, 0);
    const none = costsOf(holdings, { perTree: 20 });
    expect(none.total).toBeNull();
    expect(pricesMissing([none])).toEqual(['belts', 'walls']);
    expect(costsOf(holdingsOf(document, null), undefined).total).toBe(0);
  });
});
