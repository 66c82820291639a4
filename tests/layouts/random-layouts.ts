import { seededRandom } from '../../src/numeric/random.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { at, box, feature, line, siteOf } from '../site/small-site.ts';

const SPECIES = ['Malus domestica', 'Juglans regia', 'Corylus avellana', undefined];

/** A site with a field and a layout A of random things at random places, some of them alike. */
export function randomLayouts(seed: number): SiteDocument {
  const random = seededRandom(seed);
  const some = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const metres = () => Math.round(random() * 90);
  const things = Array.from({ length: 3 + Math.floor(random() * 20) }, (_, i) => {
    const id = `own-${i}`;
    const common = { layout: 'A', ...(random() < 0.3 ? { name: some(['Old one', 'New one']) } : {}) };
    const status = some(['planned', 'existing']);
    switch (some(['tree', 'tree', 'tree', 'belt', 'wall', 'patch'])) {
      case 'belt':
        return feature(
          id,
          { ...common, kind: 'belt', status, plantedYear: 2027 },
          line([metres(), metres()], [metres(), metres() + 1]),
        );
      case 'wall':
        return feature(
          id,
          { ...common, kind: 'wall', fromYear: 2020 + Math.floor(random() * 20) },
          line([metres(), metres()], [metres(), metres() + 1]),
        );
      case 'patch':
        return feature(id, { ...common, kind: 'patch' }, box(10, 10, 20 + metres(), 20 + metres()));
      default:
        return feature(
          id,
          {
            ...common,
            kind: 'tree',
            status,
            plantedYear: 2027 + Math.floor(random() * 9),
            ...(random() < 0.5 ? { tag: some(['N1', 'F1', 'F2']) } : {}),
            species: some(SPECIES),
          },
          at(metres(), metres()),
        );
    }
  });
  return siteOf(
    [feature('f1', { kind: 'field', name: 'Pound Field', taken: true }, box(0, 0, 100, 100)), ...things],
    { layouts: [{ name: 'A' }], prices: { perTree: 20, perBeltM: 3, perWallM: 8, currency: 'CAD' } },
  );
}

/** The same features in another order. */
export function shuffled(document: SiteDocument, seed: number): SiteDocument {
  const random = seededRandom(seed);
  const features = document.features
    .map((each) => ({ each, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ each }) => each);
  return { ...document, features };
}
