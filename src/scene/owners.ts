import type { FeatureId, SiteDocument } from '../site/document.ts';

/** Whose each belt, block and tree is, where the file says; what has no owner is left out. */
export function ownersOf({ features }: SiteDocument): ReadonlyMap<FeatureId, string> {
  const owners = new Map<FeatureId, string>();
  for (const { id, properties } of features) {
    const owner = 'owner' in properties ? properties.owner : undefined;
    if (typeof owner === 'string' && owner.trim() !== '') owners.set(id, owner);
  }
  return owners;
}
