import { featureWords, type SiteCheck, type SiteProblem } from './problem.ts';

/** Names that the catalogue does not know, and planned things that will not grow for want of one. */
export const checkSpecies: SiteCheck = (document, { knowsSpecies }) => {
  const problems: SiteProblem[] = [];
  for (const feature of document.features) {
    const p = feature.properties;
    if (p.kind !== 'tree' && p.kind !== 'belt' && p.kind !== 'block' && p.kind !== 'planting') continue;
    const say = (level: SiteProblem['level'], words: string) =>
      problems.push({ level, featureId: feature.id, sentence: `${featureWords(feature)}: ${words}` });
    const unknown = (property: string, name: string, so: string): string | null => {
      const answer = knowsSpecies?.(name);
      if (!answer || answer.known) return null;
      const meant = answer.suggestion ? `; did you mean ${JSON.stringify(answer.suggestion)}?` : '.';
      return `${property} is ${JSON.stringify(name)}; expected a botanical name of the catalogue or of the site's own species, ${so}${meant}`;
    };
    const { species } = p;
    if (species === undefined) {
      if (p.kind !== 'planting' && p.status === 'planned')
        say('note', 'species is missing; without one it does not grow.');
    } else {
      const words = unknown('species', species, 'so it does not grow');
      if (words) say('problem', words);
    }
    const also = p.kind === 'belt' || p.kind === 'block' ? (p.alsoSpecies ?? []) : [];
    also.forEach((name, i) => {
      const words = unknown(`alsoSpecies[${i}]`, name, 'so nothing is known of it');
      if (words) say('problem', words);
    });
    if (also.length > 0 && species === undefined)
      say(
        'note',
        'alsoSpecies is given without species; the main one belongs there, for the belt grows by it.',
      );
  }
  return problems;
};
