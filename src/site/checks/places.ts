import { distanceToLineM, isInside, lineEnters } from '../plane-geometry.ts';
import { beltDefaults } from '../records/belt.ts';
import { REGISTRY } from '../records/registry.ts';
import { type LocalShape, localShapes } from './local-shapes.ts';
import { featureWords, inOneLayout, listWords, type SiteCheck, type SiteProblem } from './problem.ts';

/** Farther than this from the first feature, a coordinate is most likely a slip. */
const FAR_M = 20_000;

/** Things that stand in each other's way, and things that lie where nobody would look for them. */
export const checkPlaces: SiteCheck = (document) => {
  const shapes = localShapes(document);
  const kindOf = ({ feature }: LocalShape) => feature.properties.kind;
  const near = shapes.filter((shape) => Math.hypot(...shape.lines[0][0]) <= FAR_M);
  const woody = near.filter((shape) => ['belt', 'block'].includes(kindOf(shape)));
  const fields = near.filter((shape) => kindOf(shape) === 'field');
  const problems: SiteProblem[] = shapes
    .filter((shape) => !near.includes(shape))
    .map((shape) => ({
      level: 'problem',
      featureId: shape.feature.id,
      sentence: `${featureWords(shape.feature)}: it lies ${Math.round(Math.hypot(...shape.lines[0][0]) / 1000)} km from ${featureWords(shapes[0].feature)}; expected everything of a site within ${FAR_M / 1000} km.`,
    }));

  for (const shape of near) {
    const { feature } = shape;
    const say = (level: SiteProblem['level'], sentence: string) =>
      problems.push({ level, featureId: feature.id, sentence: `${featureWords(feature)}: ${sentence}` });
    const others = (kinds: string[]) =>
      near.filter((other) => kinds.includes(kindOf(other)) && inOneLayout(feature, other.feature));
    const kind = kindOf(shape);

    if (kind === 'tree') {
      const stem = shape.lines[0][0];
      const around = woody.find((other) => inOneLayout(feature, other.feature) && standsIn(stem, other));
      if (around)
        say(
          'problem',
          `it stands inside ${featureWords(around.feature)}, so its shade is counted twice; expected it beside, or left to the ${REGISTRY[around.feature.properties.kind].label}.`,
        );
      const house = others(['building']).find((other) => isInside(stem, other.lines));
      if (house) say('problem', `it stands inside ${featureWords(house.feature)}; expected it outside.`);
      if (feature.properties.status === 'planned') {
        const kept = others(['path', 'keepOut', 'service']).find((way) => isWithinOffset(stem, way));
        if (kept)
          say(
            'note',
            `it is planned on ${featureWords(kept.feature)} or within the distance kept free from it.`,
          );
      }
    }
    if (kind === 'belt') {
      const house = others(['building']).find((other) => lineEnters(shape.lines[0], other.lines));
      if (house) say('problem', `it runs through ${featureWords(house.feature)}; expected it outside.`);
    }
    if (kind === 'patch' && fields.length > 0) {
      const outside = shape.lines[0].every(
        (corner) => !fields.some((field) => isInside(corner, field.lines)),
      );
      if (outside) say('note', 'it lies outside every field.');
    }
  }

  const taken = fields.filter(
    ({ feature }) => feature.properties.kind === 'field' && feature.properties.taken,
  );
  if (taken.length > 1)
    problems.push({
      level: 'problem',
      featureId: taken[1].feature.id,
      sentence: `${listWords(taken.map(({ feature }) => featureWords(feature)))}: taken is true for each; expected one field to be taken.`,
    });
  if (shapes.length > 0 && fields.length === 0)
    problems.push({
      level: 'note',
      sentence:
        'No field is drawn: maps cover everything that is drawn, and there is no ground to count as a patch.',
    });
  return problems;
};

function standsIn(stem: readonly [number, number], { feature, lines }: LocalShape): boolean {
  const p = feature.properties;
  if (p.kind === 'belt') return distanceToLineM(stem, lines[0]) < (p.widthM ?? beltDefaults.widthM) / 2;
  return isInside(stem, lines);
}

function isWithinOffset(stem: readonly [number, number], { feature, lines }: LocalShape): boolean {
  if (feature.geometry.type === 'Polygon' && isInside(stem, lines)) return true;
  const offsetM = feature.properties.offsetM ?? REGISTRY[feature.properties.kind].defaults.offsetM;
  return lines.some((line) => distanceToLineM(stem, line) < Number(offsetM));
}
