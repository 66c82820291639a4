import { REGISTRY } from '../records/registry.ts';
import { treeDefaults } from '../records/tree.ts';
import { featureWords, type SiteCheck, type SiteProblem } from './problem.ts';

/** Sizes beyond what is likely, and crowns that start above the height that is assumed. */
export const checkSizes: SiteCheck = (document) => {
  const problems: SiteProblem[] = [];
  for (const feature of document.features) {
    const p = feature.properties;
    const say = (level: SiteProblem['level'], sentence: string) =>
      problems.push({ level, featureId: feature.id, sentence: `${featureWords(feature)}: ${sentence}` });
    for (const { key, label, unit, max } of REGISTRY[p.kind].fields) {
      const value = p[key];
      if (
        max !== undefined &&
        unit !== 'share' &&
        unit !== 'year' &&
        typeof value === 'number' &&
        value > max
      )
        say(
          'note',
          `${key} is ${value}; expected ${max} or less (${label.toLowerCase()}): is the unit right?`,
        );
    }
    // A clear stem above the top of a young tree is a plan for later; one above a standing tree is a slip.
    const young = p.kind === 'tree' && (p.plantedYear !== undefined || p.status === 'planned');
    if (p.kind === 'tree' && !young && p.heightM === undefined && (p.crownBaseM ?? 0) >= treeDefaults.heightM)
      say(
        'problem',
        `crownBaseM is ${p.crownBaseM} but heightM is missing; without it the top is taken to be at ${treeDefaults.heightM} m.`,
      );
    if (
      p.kind === 'tree' &&
      p.crownRadiusM !== undefined &&
      p.heightM !== undefined &&
      p.crownRadiusM > 2 * p.heightM
    )
      say(
        'note',
        `crownRadiusM is ${p.crownRadiusM} at a height of ${p.heightM} m; is it the diameter, or the height of another year?`,
      );
  }
  return problems;
};
