import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { featureWords, type SiteProblem } from '../site/checks/problem.ts';
import { featuresOfKind } from '../site/chosen-features.ts';
import { shadowReadings } from './readings.ts';
import { scoreReadings } from './score-readings.ts';
import { scoreSentences } from './score-words.ts';
import { canBeStaked } from './staked-feature.ts';

/** What the site's readings of shadows say of it: a note for each thing they are of, and for those that are of nothing. */
export function readingNotes(site: Omit<SiteOutdoors, 'layout'>): SiteProblem[] {
  const { document } = site;
  const staked = document.features.filter(canBeStaked);
  const notes = staked.flatMap(({ id, properties }): SiteProblem[] => {
    const readings = shadowReadings(document, id);
    if (readings.length === 0) return [];
    const score = scoreReadings({ ...site, layout: properties.layout ?? null }, id, readings);
    const left = score.left.map(
      ({ reading, why }) => `The reading of ${reading.date} ${reading.time} is not scored: ${why}.`,
    );
    return [
      {
        level: 'note',
        featureId: id,
        sentence: `Shadow of ${score.label}: ${[...scoreSentences(score, 'm'), ...left].join(' ')}`,
      },
    ];
  });
  const ids = new Set(staked.map(({ id }) => String(id)));
  const lost = featuresOfKind(document.features, 'measure').flatMap((feature): SiteProblem[] => {
    const { quantity, of, date, time } = feature.properties;
    if (quantity !== 'shadow') return [];
    const wrong =
      of === undefined || !ids.has(String(of))
        ? `of is ${JSON.stringify(of ?? null)}; expected the id of a tree, belt, block, wall or building`
        : date === undefined || time === undefined
          ? 'it has no date or no time; expected both'
          : null;
    return wrong === null
      ? []
      : [
          {
            level: 'note',
            featureId: feature.id,
            sentence: `${featureWords(feature)} is a reading of a shadow that is not scored: ${wrong}.`,
          },
        ];
  });
  return [...notes, ...lost];
}
