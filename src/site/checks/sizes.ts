import { PLANTED_HEIGHT_M } from '../records/defaults.ts';
import { REGISTRY } from '../records/registry.ts';
import { treeDefaults } from '../records/tree.ts';
import { featureWords, type SiteCheck, type SiteProblem } from './problem.ts';

/** Sizes beyond what is likely, and crowns that start above the top of a young tree. */
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
    if (p.kind === 'tree' && p.crownBaseM !== undefined) {
      const planted = p.plantedYear !== undefined || p.status === 'planned';
      const topM = p.heightM ?? (planted ? PLANTED_HEIGHT_M : treeDefaults.heightM);
      if (p.crownBaseM >= topM)
        say(
          planted ? 'note' : 'problem',
          `crownBaseM is ${p.crownBaseM}; its top is at ${topM} m in the year it is planted or measured, so its leaves start lower until it has grown.`,
        );
    }
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
