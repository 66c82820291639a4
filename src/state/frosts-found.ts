import { siteFrosts } from '../scene/site-frosts.ts';
import type { AppState } from './model.ts';

let last: { readonly of: readonly unknown[]; readonly sentences: readonly string[] } | null = null;

/** What the weather file tells of frosts and heat, or why it does not. The same sentences until something changes. */
export function frostSentencesFound({ document, weather, centre }: AppState): readonly string[] {
  const of = [weather, document.site.growingSeason, document.site.weatherFile, centre[1] < 0];
  if (!last?.of.every((each, k) => each === of[k]))
    last = { of, sentences: siteFrosts(document, weather).sentences };
  return last.sentences;
}
