import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/numeric/random.ts';
import { keepToLayout } from '../../../src/site/actions/keep-to-layout.ts';
import { renameLayout } from '../../../src/site/actions/rename-layout.ts';
import { startLayouts } from '../../../src/site/actions/start-layouts.ts';
import { chosenFeatures } from '../../../src/site/chosen-features.ts';
import { isPlannedFeature } from '../../../src/site/common-planned.ts';
import type { SiteDocument } from '../../../src/site/document.ts';
import { layoutAfter, layoutNames } from '../../../src/site/layout-names.ts';
import { parseSite } from '../../../src/site/parse-site.ts';
import { serialiseSite } from '../../../src/site/serialise-site.ts';
import { at, feature, line, oneOfEach, siteOf } from '../small-site.ts';

const planned = (): SiteDocument =>
  siteOf([
    ...oneOfEach().features.map((each) => ({
      ...each,
      properties: { ...each.properties, layout: undefined },
    })),
    feature('b2', { kind: 'belt', status: 'planned', species: 'Alnus cordata' }, line([0, 0], [80, 0])),
    feature('n2', { kind: 'wall', heightM: 3 }, line([10, 4], [60, 4])),
    feature('t3', { kind: 'tree', tag: 'F1', status: 'planned' }, at(30, 10)),
  ]);

/** What stands in a layout, whatever its ids and whose it is. */
const whatStands = (document: SiteDocument, layout: string | null): string[] =>
  chosenFeatures(document, layout)
    .map(({ geometry, properties }) => JSON.stringify([geometry, { ...properties, layout: undefined }]))
    .sort();

describe('two layouts out of what is planned', () => {
  const before = planned();
  const after = startLayouts(before, ' First ', 'Second');

  it('leave in each of them what stood before', () => {
    expect(layoutNames(after)).toEqual(['First', 'Second']);
    for (const layout of ['First', 'Second'])
      expect(whatStands(after, layout)).toEqual(whatStands(before, null));
  });

  it('keep common what stands, and take what is planned', () => {
    const common = chosenFeatures(after, null);
    expect(common.some((each) => isPlannedFeature(each, after.site.baseYear))).toBe(false);
    expect(common.map(({ id }) => id)).toEqual([
      'f1',
      'f2',
      'b1',
      'w1',
      't1',
      'h1',
      'p1',
      'x1',
      'k1',
      's1',
      'm1',
      'n2',
    ]);
  });

  it('are carried by the site file', () => {
    expect(parseSite(serialiseSite(after), 'x').document.features).toHaveLength(after.features.length);
    expect(parseSite(serialiseSite(after), 'x').notes).toEqual([]);
  });

  it('are refused under one name', () => {
    expect(() => startLayouts(before, 'Same', ' Same')).toThrow(
      'Layout: there is one named "Same" already; expected another name.',
    );
    expect(() => startLayouts(before, '', 'Second')).toThrow('the name is empty');
  });
});

describe('something common that is parted', () => {
  it.each([1, 2, 3, 4])('stands in every layout as it did (seed %i)', (seed) => {
    const random = seededRandom(seed);
    let document: SiteDocument = {
      ...oneOfEach(),
      site: { ...oneOfEach().site, layouts: [{ name: 'A' }, { name: 'B' }, { name: 'C' }] },
    };
    const names = ['A', 'B', 'C'];
    const stood = names.map((name) => whatStands(document, name));
    for (let step = 0; step < 8; step++) {
      const { id } = document.features[Math.floor(random() * document.features.length)];
      document = keepToLayout(document, id, names[Math.floor(random() * 3)]);
      expect(names.map((name) => whatStands(document, name))).toEqual(stood);
      expect(new Set(document.features.map((each) => String(each.id))).size).toBe(document.features.length);
    }
  });

  it('becomes the one layout’s own with the id it had, and stays what it is where it was parted', () => {
    const once = keepToLayout(oneOfEach(), 't1', 'B');
    expect(once.features.find(({ id }) => id === 't1')?.properties.layout).toBe('B');
    expect(keepToLayout(once, 't1', 'A')).toBe(once);
    expect(() => keepToLayout(once, 't9', 'A')).toThrow();
    expect(() => keepToLayout(once, 'b1', 'D')).toThrow('expected one of "A", "B"');
  });
});

describe('the layout that is looked at', () => {
  const document = oneOfEach();
  it('follows a new name, and is let go of where it is gone', () => {
    const renamed = renameLayout(document, 'A', 'Orchard');
    expect(layoutAfter(document, renamed, 'A')).toBe('Orchard');
    expect(layoutAfter(renamed, document, 'Orchard')).toBe('A');
    expect(layoutAfter(document, renamed, 'B')).toBe('B');
    expect(layoutAfter(document, siteOf([]), 'A')).toBeNull();
    expect(layoutAfter(document, renamed, null)).toBeNull();
  });
});
