import { findSpecies } from '../plants/find-species.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import type { ForeignEdge } from './field-states.ts';

/** All the edges of one owner around a field. */
export interface OwnersEdges {
  readonly owner: string;
  readonly noun: string;
  readonly ids: readonly FeatureId[];
}

/** In the order in which each owner is first met. */
export function edgesByOwner(document: SiteDocument, edges: readonly ForeignEdge[]): OwnersEdges[] {
  const byOwner = new Map<string, ForeignEdge[]>();
  for (const edge of edges) byOwner.set(edge.owner, [...(byOwner.get(edge.owner) ?? []), edge]);
  return [...byOwner].map(([owner, own]) => ({
    owner,
    noun: edgesNoun(document, own),
    ids: own.map(({ id }) => id),
  }));
}

/** "Norway spruce belts", "woods", "belts and woods": what they are, by species where all are of one. */
function edgesNoun(document: SiteDocument, edges: readonly ForeignEdge[]): string {
  const names = new Set(edges.map(({ feature }) => feature.properties.species));
  const [name] = names;
  const species =
    names.size === 1 && name !== undefined
      ? `${findSpecies(name, document.site.species)?.commonName ?? name} `
      : '';
  const kinds = (['belt', 'block'] as const).filter((kind) =>
    edges.some(({ feature }) => feature.properties.kind === kind),
  );
  const words = kinds.map((kind) => {
    const several = edges.filter(({ feature }) => feature.properties.kind === kind).length > 1;
    return `${kind === 'belt' ? 'belt' : 'wood'}${several ? 's' : ''}`;
  });
  return `${species}${words.join(' and ')}`;
}
