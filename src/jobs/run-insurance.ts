import { pointsOnField } from '../belts/belt-side.ts';
import { type Insurance, type InsuranceWish, withInsurance } from '../belts/insurance-belt.ts';
import { latestYear } from '../belts/latest-year.ts';
import { PACES } from '../belts/years-to-protect.ts';
import type { Pace } from '../growth/height-curve.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { runFieldCut, type WindReading } from './run-field-cut.ts';

/** Years after the felling that are looked at: what is planted grows, but other things may go. */
const AFTER_FELLING = [1, 2, 4, 8, 15, 25];
/** What must be kept where nothing is chosen, against what stands before the felling. */
const KEPT_SHARE = 0.75;

/**
 * The latest year in which the insuring belt can be planted so that the field's shelter never falls below the chosen
 * value once the edge is felled: the engine is run over the years after the felling, planting in year k, halving k.
 */
export async function runInsurance(
  runner: JobRunner,
  request: { readonly document: SiteDocument; readonly options: SceneOptions; readonly field: FieldFeature },
  wish: InsuranceWish,
  reading: WindReading,
  run: RunOptions = {},
): Promise<Insurance> {
  const { document, options, field } = request;
  const { edgeId, felledInYear } = wish;
  const felled = { ids: [edgeId], fromYear: felledInYear };
  const points = pointsOnField(field, options.frame);
  // Without the insuring belt where it is drawn already: it is what is asked about.
  const insurerId = 'beltId' in wish.insurer ? wish.insurer.beltId : null;
  const bare =
    insurerId === null
      ? document
      : { ...document, features: document.features.filter(({ id }) => id !== insurerId) };
  let looks = 0;
  const expected =
    3 +
    AFTER_FELLING.length +
    PACES.length * (AFTER_FELLING.length + 2 + Math.log2(Math.max(2, felledInYear)));
  const cutAt = async (site: SiteDocument, moment: SceneOptions) => {
    const { meanCut } = await runFieldCut(runner, site, moment, field, reading, run);
    run.onProgress?.(Math.min(1, ++looks / expected));
    return meanCut;
  };
  const at = (year: number, pace: Pace) => ({ ...options, year, pace, felled });
  const withEdge = await cutAt(bare, { ...at(felledInYear, 'usual'), felled: null });
  const leastCutShare = wish.leastCutShare ?? KEPT_SHARE * withEdge;

  const cutWhenFelled = (site: SiteDocument, pace: Pace) => cutAt(site, at(felledInYear, pace));
  const lowestLater = async (site: SiteDocument, pace: Pace) =>
    Math.min(
      ...(await Promise.all(AFTER_FELLING.map((after) => cutAt(site, at(felledInYear + after, pace))))),
    );
  const withoutEdge = await cutWhenFelled(bare, 'usual');
  const needless =
    withoutEdge >= leastCutShare &&
    (await cutWhenFelled(bare, 'slow')) >= leastCutShare &&
    (await lowestLater(bare, 'slow')) >= leastCutShare;
  const planted = (year: number) => withInsurance(document, wish, year, options, points);
  const plantedAtOnce = Math.min(
    await cutWhenFelled(planted(0), 'usual'),
    await lowestLater(planted(0), 'usual'),
  );
  const latest: Record<Pace, number | null> = {
    slow: felledInYear,
    usual: felledInYear,
    fast: felledInYear,
  };
  for (const pace of needless ? [] : PACES) {
    const keepsThen = async (year: number) => (await cutWhenFelled(planted(year), pace)) >= leastCutShare;
    const keepsLater = async (year: number) => (await lowestLater(planted(year), pace)) >= leastCutShare;
    // What is planted grows, so the year of felling mostly decides: later years are looked at once, for its answer.
    const then = await latestYear(0, felledInYear, keepsThen);
    latest[pace] =
      then === null || (await keepsLater(then)) ? then : await latestYear(0, then - 1, keepsLater);
  }
  return { wish, leastCutShare, withEdge, withoutEdge, plantedAtOnce, latest, needless };
}
