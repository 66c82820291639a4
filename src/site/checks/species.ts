import type { SiteCheck, SiteProblem } from './problem.ts';
import { featureWords } from './problem.ts';

/** Names that the catalogue does not know, and planned things that will not grow for want of one. */
export const checkSpecies: SiteCheck = (document, { knowsSpecies }) => {
  const problems: SiteProblem[] = [];
  for (const feature of document.features) {
    const p = feature.properties;
    if (p.kind !== 'tree' && p.kind !== 'belt' && p.kind !== 'block' && p.kind !== 'planting') continue;
    const { species } = p;
    if (species === undefined) {
      if (p.kind !== 'planting' && p.status === 'planned')
        problems.push({
          level: 'note',
          featureId: feature.id,
          sentence: `${featureWords(feature)}: species is missing; without one it does not grow.`,
        });
      continue;
    }
    const answer = knowsSpecies?.(species);
    if (!answer || answer.known) continue;
    const meant = answer.suggestion ? `; did you mean ${JSON.stringify(answer.suggestion)}?` : '.';
    const sentence = `${featureWords(feature)}: species is ${JSON.stringify(species)}; expected a botanical name of the catalogue or of the site's own species, so it does not grow${meant}`;
    problems.push({ level: 'problem', featureId: feature.id, sentence });
  }
  return problems;
};
