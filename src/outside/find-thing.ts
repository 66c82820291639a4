import { labelOf } from '../scene/things.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';
import { REGISTRY } from '../site/records/registry.ts';
import { BadInputError } from '../units/bad-input.ts';

/**
 * The thing of an id, a name, a tree's number, or what it is called in sentences, whatever its case.
 * @param isWanted which kinds of thing may be found. @param kinds what they are called: "belt or wall".
 * @throws BadInputError when there is none, or several; the sentence lists them.
 */
export function findThing<Wanted extends SiteFeature>(
  document: SiteDocument,
  layout: string | null,
  wanted: string,
  isWanted: (feature: SiteFeature) => feature is Wanted,
  kinds: string,
): Wanted {
  const all = chosenFeatures(document, layout);
  const things = all.filter(isWanted);
  const plain = (text: unknown) => String(text).trim().toLowerCase();
  const namesOf = (feature: Wanted): unknown[] => {
    const { name, tag } = feature.properties as { readonly name?: string; readonly tag?: string };
    return [name, tag, labelOf(document, feature)].filter((text) => text !== undefined);
  };
  const byId = things.find(({ id }) => plain(id) === plain(wanted));
  const found = byId
    ? [byId]
    : things.filter((feature) => namesOf(feature).some((name) => plain(name) === plain(wanted)));
  if (found.length === 1) return found[0];
  const listed = (features: readonly Wanted[]) =>
    features
      .map((feature) => `${JSON.stringify(String(feature.id))} (${labelOf(document, feature)})`)
      .join(', ');
  if (found.length > 1)
    throw new BadInputError(
      `Several things are called ${JSON.stringify(wanted)}; expected one of ${listed(found)}.`,
    );
  const other = all.find(
    (feature) => plain(feature.id) === plain(wanted) || plain(labelOf(document, feature)) === plain(wanted),
  );
  const fault = other
    ? `${JSON.stringify(wanted)} is a ${REGISTRY[other.properties.kind].label}; expected a ${kinds},`
    : `There is no ${kinds} ${JSON.stringify(wanted)}; expected`;
  throw new BadInputError(
    `${fault} ${things.length === 0 ? 'one that is drawn, and none is' : `one of ${listed(things)}`}.`,
  );
}
