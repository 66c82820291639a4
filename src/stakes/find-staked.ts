import { labelOf } from '../scene/things.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';
import { canBeStaked, type StakedFeature } from './staked-feature.ts';

/**
 * The thing of an id, a name, a tree's number, or what it is called in sentences, whatever its case.
 * @throws BadInputError when there is none, or several; the sentence lists them.
 */
export function findStaked(document: SiteDocument, layout: string | null, wanted: string): StakedFeature {
  const casters = chosenFeatures(document, layout).filter(canBeStaked);
  const plain = (text: unknown) => String(text).trim().toLowerCase();
  const namesOf = (feature: StakedFeature): unknown[] => {
    const { name, tag } = feature.properties as { readonly name?: string; readonly tag?: string };
    return [name, tag, labelOf(document, feature)].filter((text) => text !== undefined);
  };
  const byId = casters.find(({ id }) => plain(id) === plain(wanted));
  const found = byId
    ? [byId]
    : casters.filter((feature) => namesOf(feature).some((name) => plain(name) === plain(wanted)));
  if (found.length === 1) return found[0];
  const listed = (features: readonly StakedFeature[]) =>
    features
      .map((feature) => `${JSON.stringify(String(feature.id))} (${labelOf(document, feature)})`)
      .join(', ');
  if (found.length > 1)
    throw new BadInputError(
      `Several things are called ${JSON.stringify(wanted)}; expected one of ${listed(found)}.`,
    );
  throw new BadInputError(
    `There is no tree, belt, block, wall or building ${JSON.stringify(wanted)}; expected ${
      casters.length === 0 ? 'one that is drawn, and none is' : `one of ${listed(casters)}`
    }.`,
  );
}
