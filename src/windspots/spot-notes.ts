import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { labelOf } from '../scene/things.ts';
import { featureWords, type SiteProblem } from '../site/checks/problem.ts';
import { isKeptSpot, keptSpots } from './kept-spots.ts';
import { scoreSpots } from './score-spots.ts';
import { scoreSentences } from './score-words.ts';
import { canShelter } from './sheltering-feature.ts';

/** What the site's readings of the wind say of it: a note for each belt they are of, and for those that are of none. */
export function spotNotes(site: Omit<SiteOutdoors, 'layout'>): SiteProblem[] {
  const { document } = site;
  const sheltering = document.features.filter(canShelter);
  const notes = sheltering.flatMap((feature): SiteProblem[] => {
    const kept = keptSpots(document, feature.id);
    if (kept.length === 0) return [];
    const layout = feature.properties.layout ?? null;
    const score = scoreSpots({ ...site, layout }, feature.id, labelOf(document, feature), kept);
    const left = score.left.map(({ kept: { name }, why }) => `${name} is not scored: ${why}.`);
    return [
      {
        level: 'note',
        featureId: feature.id,
        sentence: `Wind behind ${score.label}: ${[...scoreSentences(score, 'm'), ...left].join(' ')}`,
      },
    ];
  });
  const ids = new Set(sheltering.map(({ id }) => String(id)));
  const lost = document.features.filter(isKeptSpot).flatMap((feature): SiteProblem[] => {
    const { of } = feature.properties;
    return of !== undefined && ids.has(String(of))
      ? []
      : [
          {
            level: 'note',
            featureId: feature.id,
            sentence: `${featureWords(feature)} is a reading of the wind that is not scored: of is ${JSON.stringify(of ?? null)}; expected the id of a belt or wall.`,
          },
        ];
  });
  return [...notes, ...lost];
}
