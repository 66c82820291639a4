import { describe, expect, it } from 'vitest';
import { vigourSentences } from '../../src/scene/growth-words.ts';
import { siteVigour } from '../../src/scene/site-vigour.ts';
import { treeAtYear } from '../../src/scene/stand-at-year.ts';
import type { FeatureOf } from '../../src/site/document.ts';
import { at, feature, siteOf } from '../site/small-site.ts';

type Props = Record<string, unknown>;
const tree = (id: string, properties: Props) =>
  feature(id, { kind: 'tree', species: 'Juglans regia', ...properties }, at(10, 10));
const planted = (id: string, heightM: number, more: Props = {}) =>
  tree(id, { plantedYear: 2010, heightM, measuredYear: 2024, ...more });
const read = (of: string, value: number, date: string) =>
  feature(`m-${of}-${date}`, { kind: 'measure', quantity: 'height', of, value, date }, at(10, 10));

describe('what measured heights say of a site', () => {
  it('sets each beside what the model gives a plant of that year, with the miss before and after', () => {
    const document = siteOf(['a', 'b', 'c', 'd'].map((id) => planted(id, 6)));
    const found = siteVigour(document, null);
    const model = treeAtYear(document, tree('x', { plantedYear: 2010 }) as unknown as FeatureOf<'tree'>, {
      year: 2024 - 2027,
      layout: null,
      pace: 'usual',
    })!;
    expect(found.readings).toHaveLength(4);
    expect(found.readings[0].expectedM).toBeCloseTo(model.heightM, 9);
    expect(found.fit!.site.vigour).toBeLessThan(1);
    expect(found.before!.meanShare).toBeCloseTo(1 - 6 / model.heightM, 9);
    expect(found.before!.leanShare).toBeCloseTo(6 / model.heightM - 1, 9);
    expect(found.after!.meanShare).toBeLessThan(0.5 * found.before!.meanShare);
    expect(found.isNews).toBe(true);
  });

  it('is no news once the site reckons with it', () => {
    const document = siteOf(['a', 'b', 'c'].map((id) => planted(id, 6)));
    const { fit } = siteVigour(document, null);
    const taken = {
      ...document,
      site: {
        ...document.site,
        vigour: Number(fit!.site.vigour.toFixed(2)),
        species: fit!.species.map(({ species, vigour }) => ({
          name: species,
          vigour: Number(vigour.toFixed(2)),
        })),
      },
    };
    const after = siteVigour(taken, null);
    expect(after.isNews).toBe(false);
    expect(after.readings[0].expectedM).toBeCloseTo(after.readings[0].fittedM!, 1);
    expect(after.fit).toEqual(fit);
  });

  it('makes what was not measured grow by it, and a species by its own', () => {
    const stands = (site: Props) =>
      treeAtYear(siteOf([], site), tree('x', { plantedYear: 2027 }) as unknown as FeatureOf<'tree'>, {
        year: 20,
        layout: null,
        pace: 'usual',
      })!.heightM;
    const usual = stands({});
    expect(stands({ vigour: 1.2 })).toBeGreaterThan(1.1 * usual);
    const both = stands({ vigour: 1.2, species: [{ name: 'Juglans regia', vigour: 1.25 }] });
    expect(both).toBeCloseTo(stands({ vigour: 1.5 }), 9);
    expect(stands({ species: [{ name: 'Juglans nigra', vigour: 1.25 }] })).toBe(usual);
  });

  it('says when there are too few, and when there are none', () => {
    const few = siteVigour(siteOf([planted('a', 6), planted('b', 7)]), null);
    expect(few.fit).toBeNull();
    expect(vigourSentences(few)[0]).toMatch(/^2 heights of 2 plants: too few .* 3 plants are needed/);
    expect(vigourSentences(siteVigour(siteOf([]), null))[0]).toMatch(/^No height has been read/);
  });

  it('leaves out what tells nothing, and says why', () => {
    const whys = (features: unknown[]) => siteVigour(siteOf(features), null).left.map(({ why }) => why);
    expect(whys([tree('a', { heightM: 6, measuredYear: 2024 })])).toEqual([
      'its year of planting is not known',
    ]);
    expect(whys([planted('a', 40)])[0]).toMatch(/^no vigour from 0.3 to 2 explains it/);
    expect(whys([planted('a', 6, { species: 'Nothing at all' })])).toEqual(['its species is not known']);
    expect(whys([planted('a', 6, { care: [{ what: 'coppice', year: 2018 }] })])).toEqual([
      'it was cut in 2018',
    ]);
    expect(whys([planted('a', 6, { care: [{ what: 'coppice', year: 2026 }] })])).toEqual([]);
    expect(whys([planted('a', 1, { plantedHeightM: 1.5 })])[0]).toMatch(/^it was 1.5 m before/);
    expect(whys([planted('a', 6, { plantedYear: 2025, measuredYear: 2024 })])).toEqual([
      'no season has passed since it was planted',
    ]);
  });

  it('reckons from an earlier height where the year of planting is not known', () => {
    const document = siteOf([tree('a', {}), read('a', 5, '2015-10-10'), read('a', 9, '2025-10-10')]);
    const { readings, left } = siteVigour(document, null);
    expect(readings).toMatchObject([{ of: 'a', plantedYear: null, reading: { heightM: 9 } }]);
    expect(left.map(({ why }) => why)).toEqual(['the others are reckoned from it']);
    const model = treeAtYear(
      document,
      tree('x', { heightM: 5, measuredYear: 2015 }) as unknown as FeatureOf<'tree'>,
      { year: -2, layout: null, pace: 'usual' },
    )!;
    expect(readings[0].expectedM).toBeCloseTo(model.heightM, 9);
  });

  it('takes only what belongs to the layout', () => {
    const document = siteOf([planted('a', 6), planted('b', 6, { layout: 'A' })], {
      layouts: [{ name: 'A' }],
    });
    expect(siteVigour(document, null).plants).toBe(1);
    expect(siteVigour(document, 'A').plants).toBe(2);
  });
});
