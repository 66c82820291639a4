import type { SiteDocument, SiteFeature } from '../site/document.ts';
import { type LayoutName, ownFeatures } from './holdings.ts';

/** The same thing in two layouts, not the same in both. */
export interface ChangedThing {
  readonly a: SiteFeature;
  readonly b: SiteFeature;
  /** Stands elsewhere or has another shape. */
  readonly moved: boolean;
  /** Properties that are not the same, in the order of the alphabet. */
  readonly properties: readonly string[];
}

export interface WhatDiffers {
  readonly onlyA: readonly SiteFeature[];
  readonly onlyB: readonly SiteFeature[];
  readonly changed: readonly ChangedThing[];
}

/**
 * What two layouts do not have in common. Ids tell nothing, for a copy has ids of its own: a thing is the same where
 * its shape and its properties are; it was changed where its kind and its tag, its name or its place are the same.
 */
export function whatDiffers(document: SiteDocument, a: LayoutName, b: LayoutName): WhatDiffers {
  let onlyA = ownFeatures(document, a);
  let onlyB = ownFeatures(document, b);
  [onlyA, onlyB] = pairsTakenOut(onlyA, onlyB, signatureOf, () => {});
  const changed: ChangedThing[] = [];
  for (const keyOf of [markOf, nameOf, shapeOf])
    [onlyA, onlyB] = pairsTakenOut(onlyA, onlyB, keyOf, (one, other) => changed.push(changeOf(one, other)));
  return { onlyA, onlyB, changed };
}

export const differInNothing = ({ onlyA, onlyB, changed }: WhatDiffers): boolean =>
  onlyA.length === 0 && onlyB.length === 0 && changed.length === 0;

/** Takes out of both lists what has the same key, one for one. */
function pairsTakenOut(
  listA: readonly SiteFeature[],
  listB: readonly SiteFeature[],
  keyOf: (feature: SiteFeature) => string | null,
  onPair: (a: SiteFeature, b: SiteFeature) => void,
): [SiteFeature[], SiteFeature[]] {
  const waiting = new Map<string, SiteFeature[]>();
  for (const feature of listB) {
    const key = keyOf(feature);
    if (key !== null) waiting.set(key, [...(waiting.get(key) ?? []), feature]);
  }
  const paired = new Set<SiteFeature>();
  const restA = listA.filter((feature) => {
    const key = keyOf(feature);
    const other = key === null ? undefined : waiting.get(key)?.shift();
    if (!other) return true;
    paired.add(other);
    onPair(feature, other);
    return false;
  });
  return [restA, listB.filter((feature) => !paired.has(feature))];
}

/** JSON with sorted members, so that their order in the file tells nothing. */
const inOrder = (value: unknown): string =>
  JSON.stringify(value, (_key, part: unknown) =>
    part && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([x], [y]) => (x < y ? -1 : 1)))
      : part,
  );

const ownProperties = ({ properties }: SiteFeature): Record<string, unknown> => {
  const { layout: _, ...rest } = properties as Record<string, unknown>;
  return rest;
};
const shapeOf = (feature: SiteFeature): string =>
  `${feature.properties.kind} ${inOrder(feature.geometry.coordinates)}`;
const signatureOf = (feature: SiteFeature): string =>
  `${shapeOf(feature)} ${inOrder(ownProperties(feature))}`;
const markOf = ({ properties }: SiteFeature): string | null =>
  properties.kind === 'tree' && properties.tag ? properties.tag : null;
const nameOf = ({ properties }: SiteFeature): string | null =>
  properties.name ? `${properties.kind} ${properties.name}` : null;

function changeOf(a: SiteFeature, b: SiteFeature): ChangedThing {
  const [ofA, ofB] = [ownProperties(a), ownProperties(b)];
  const keys = [...new Set([...Object.keys(ofA), ...Object.keys(ofB)])].sort();
  return {
    a,
    b,
    moved: shapeOf(a) !== shapeOf(b),
    properties: keys.filter((key) => inOrder(ofA[key]) !== inOrder(ofB[key])),
  };
}
