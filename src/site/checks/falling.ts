import { distanceToLineM, isInside } from '../plane-geometry.ts';
import { type LocalShape, localShapes } from './local-shapes.ts';
import {
  type CheckContext,
  featureWords,
  inOneLayout,
  listWords,
  type SiteCheck,
  type SiteProblem,
} from './problem.ts';

/**
 * Trees that are, or will be, taller than their distance from a building or an overhead line. Usual practice names the
 * distance; whether a tree is sound, and what must be kept free, is for local codes and licensed people to say.
 */
export const checkFalling: SiteCheck = (document, context) => {
  const shapes = localShapes(document);
  const trees = shapes.filter(({ feature }) => feature.properties.kind === 'tree');
  return shapes.filter(isAtRisk).flatMap((target): SiteProblem[] => {
    const reaching = trees.filter(
      (tree) =>
        inOneLayout(tree.feature, target.feature) &&
        distanceM(tree, target) < Math.max(heightM(tree), matureHeightM(tree, context)),
    );
    if (reaching.length === 0) return [];
    const now = reaching.filter((tree) => distanceM(tree, target) < heightM(tree)).length;
    const when =
      now === reaching.length
        ? 'already taller'
        : now > 0
          ? 'taller, now or full-grown,'
          : 'taller when full-grown';
    const howMany = reaching.length === 1 ? '1 tree is' : `${reaching.length} trees are`;
    const names = listWords(reaching.map((tree) => nameOf(tree)));
    return [
      {
        level: 'note',
        featureId: target.feature.id,
        sentence: `${featureWords(target.feature)}: ${howMany} ${when} than the distance to it (${names}); local codes and licensed people say what to keep free and whether a tree is sound.`,
      },
    ];
  });
};

const isAtRisk = ({ feature: { properties: p } }: LocalShape): boolean =>
  p.kind === 'building' ||
  (p.kind === 'service' && /overhead|power|electric|wire/i.test(`${p.reason ?? ''} ${p.name ?? ''}`));

const nameOf = ({ feature }: LocalShape): string =>
  feature.properties.kind === 'tree' && feature.properties.tag
    ? feature.properties.tag
    : featureWords(feature);

function distanceM(tree: LocalShape, target: LocalShape): number {
  const stem = tree.lines[0][0];
  if (target.feature.geometry.type === 'Polygon' && isInside(stem, target.lines)) return 0;
  return Math.min(...target.lines.map((line) => distanceToLineM(stem, line)));
}

const heightM = ({ feature: { properties: p } }: LocalShape): number =>
  p.kind === 'tree' ? (p.heightM ?? 0) : 0;

function matureHeightM({ feature: { properties: p } }: LocalShape, { knowsSpecies }: CheckContext): number {
  const species = p.kind === 'tree' ? p.species : undefined;
  return (species !== undefined && knowsSpecies?.(species).matureHeightM) || 0;
}
