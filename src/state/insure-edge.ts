import { fieldJudgedBy } from '../belts/belt-facts.ts';
import { isBeltLike, isPlanned } from '../belts/belt-shape.ts';
import { pointsOnField } from '../belts/belt-side.ts';
import { type InsuranceWish, withInsurance } from '../belts/insurance-belt.ts';
import { labelOf } from '../scene/things.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import type { App } from './model.ts';
import { sceneOptions } from './scene-options.ts';

/** The belts of a layout that are planned, with what they are called. */
export const plannedBeltsOf = (
  document: SiteDocument,
  layout: string | null,
): { readonly id: FeatureId; readonly label: string }[] =>
  chosenFeatures(document, layout)
    .filter(isBeltLike)
    .filter((belt) => belt.properties.kind === 'belt' && isPlanned(belt))
    .map((belt) => ({ id: belt.id, label: labelOf(document, belt) }));

/** Plants the insuring belt in a year after the base year: one ordinary edit. */
export function plantInsurance(app: App, wish: InsuranceWish, plantedYear: number): void {
  const { ground, document } = app;
  const field = fieldJudgedBy(document);
  if (!ground || !field) return;
  const points = pointsOnField(field, app.frame);
  app.edit('Plant the insurance belt', (before) =>
    withInsurance(before, wish, plantedYear, sceneOptions(app, ground), points),
  );
}
