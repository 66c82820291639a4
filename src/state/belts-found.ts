import { type BeltFacts, beltFacts, fieldJudgedBy } from '../belts/belt-facts.ts';
import { beltFindings } from '../belts/belt-findings.ts';
import { isBeltLike } from '../belts/belt-shape.ts';
import { type FallStrip, fallStrip } from '../belts/fall-strip.ts';
import type { BeltFinding } from '../belts/finding-types.ts';
import { labelOf } from '../scene/things.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';
import { formatLength } from './format-measure.ts';
import type { AppState } from './model.ts';
import { sceneOptions } from './scene-options.ts';

export interface BeltFound {
  readonly facts: BeltFacts;
  readonly findings: readonly BeltFinding[];
}

let last: { parts: readonly unknown[]; answer: readonly BeltFound[] } | null = null;

/** What is wrong with each belt and block; empty while it cannot be said. The same object while nothing changed. */
export function beltsFound(state: AppState): readonly BeltFound[] {
  const { document, frame, ground, weather, layout, unitSystem, beltSun } = state;
  const parts = [document, frame, ground, weather, layout, unitSystem, beltSun.result];
  if (last && parts.every((part, index) => Object.is(part, last?.parts[index]))) return last.answer;
  const answer = ground ? found() : [];
  last = { parts, answer };
  return answer;

  function found(): BeltFound[] {
    if (!ground) return [];
    try {
      return beltFacts(document, sceneOptions(state, ground)).map((facts) => ({
        facts,
        findings: beltFindings(facts, beltSun.result?.get(facts.id) ?? null, {
          metres: (lengthM) => formatLength(lengthM, unitSystem),
        }),
      }));
    } catch (reason) {
      // A wind that cannot be read is said where the wind is.
      if (reason instanceof BadInputError) return [];
      throw reason;
    }
  }
}

/** The name of the field that belts are judged by. */
export const judgedFieldName = (document: SiteDocument): string =>
  fieldJudgedBy(document)?.properties.name ?? 'the field';

/** All belts and blocks that stand and belong to the same owner. */
export const ownedBy = (document: SiteDocument, owner: string): FeatureId[] =>
  document.features
    .filter(isBeltLike)
    .filter(({ properties }) => properties.status !== 'planned' && properties.owner?.trim() === owner)
    .map(({ id }) => id);

let lastStrip: { parts: readonly unknown[]; answer: FallStrip | null } | null = null;

/** Where the trees of the chosen edge could fall in the chosen year; null: nothing of the kind is chosen, or it is not there. */
export function fallStripShown(state: AppState): FallStrip | null {
  const { document, frame, ground, selection, year, layout, shownEnd } = state;
  const parts = [document, frame, ground, selection, year, layout, shownEnd];
  if (lastStrip && parts.every((part, index) => Object.is(part, lastStrip?.parts[index])))
    return lastStrip.answer;
  const edge = document.features.find(({ id }) => id === selection);
  const answer =
    ground && edge && isBeltLike(edge) && edge.properties.status !== 'planned'
      ? fallStrip(document, edge, frame, sceneOptions(state, ground))
      : null;
  lastStrip = { parts, answer };
  return answer;
}

/** "Spruces on the west edge felled in year 12"; null: all stands as the site says. */
export function felledWords({ document, felled, year }: AppState): string | null {
  if (!felled) return null;
  const names = felled.ids.flatMap((id) => {
    const feature = document.features.find((each) => each.id === id);
    return feature ? [labelOf(document, feature)] : [];
  });
  const whom =
    names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}` : names[0];
  if (felled.fromYear === 0) return `without ${whom}`;
  return `${whom} felled in year ${felled.fromYear} (${document.site.baseYear + felled.fromYear})${year < felled.fromYear ? `, still standing in year ${year}` : ''}`;
}
