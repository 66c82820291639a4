import { type SiteEvaporation, siteEvaporation } from '../scene/site-evaporation.ts';
import type { AppState } from './model.ts';

type Needs = Pick<AppState, 'document' | 'frame' | 'ground' | 'weather' | 'year' | 'windClimate'>;
let last: { parts: readonly unknown[]; answer: SiteEvaporation } | null = null;

/** Evaporation by share of open wind, or what it lacks; null while ground or wind are not known. The same object while nothing changed. */
export function evaporationOf(state: Needs): SiteEvaporation | null {
  const { document, frame, ground, weather, year, windClimate } = state;
  if (!ground || !windClimate) return null;
  const { growingSeason, baseYear } = document.site;
  const parts = [growingSeason, baseYear, frame, ground, weather, year, windClimate];
  if (last && parts.every((part, index) => Object.is(part, last?.parts[index]))) return last.answer;
  const answer = siteEvaporation(document, { frame, ground, weather, year }, windClimate);
  last = { parts, answer };
  return answer;
}
