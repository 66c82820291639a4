import { featureWords, type SiteCheck, type SiteProblem } from './problem.ts';

/** Years that contradict each other. */
export const checkYears: SiteCheck = (document) => {
  const problems: SiteProblem[] = [];
  const { baseYear } = document.site;
  for (const feature of document.features) {
    const p = feature.properties;
    const say = (level: SiteProblem['level'], sentence: string) =>
      problems.push({ level, featureId: feature.id, sentence: `${featureWords(feature)}: ${sentence}` });
    if (p.kind === 'wall' && p.fromYear !== undefined && p.toYear !== undefined && p.toYear < p.fromYear)
      say(
        'problem',
        `toYear is ${p.toYear}; expected its fromYear, ${p.fromYear}, or later, so it never stands.`,
      );
    if (p.kind !== 'tree' && p.kind !== 'belt' && p.kind !== 'block') continue;
    const { plantedYear, measuredYear, removedYear } = p;
    if (plantedYear !== undefined && removedYear !== undefined && removedYear <= plantedYear)
      say(
        'problem',
        `plantedYear is ${plantedYear}; expected a year before its removedYear, ${removedYear}, so it never stands.`,
      );
    if (plantedYear !== undefined && measuredYear !== undefined && measuredYear < plantedYear)
      say('problem', `measuredYear is ${measuredYear}; expected its plantedYear, ${plantedYear}, or later.`);
    if (measuredYear !== undefined && p.heightM === undefined)
      say(
        'note',
        `measuredYear is ${measuredYear} but heightM is missing; expected the height that was measured.`,
      );
    if (p.status === 'planned' && plantedYear !== undefined && plantedYear < baseYear)
      say(
        'note',
        `it is planned, but its plantedYear, ${plantedYear}, is before the year the plan starts, ${baseYear}.`,
      );
    if (p.status !== 'planned' && plantedYear === undefined && p.heightM === undefined)
      say(
        'note',
        'heightM is missing; until it is measured a usual height is assumed, and shade and shelter follow it.',
      );
  }
  return problems;
};
