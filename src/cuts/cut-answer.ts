import type { CareEvent } from '../growth/care.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { withCare } from './cut-options.ts';
import type { CutWay, ProposedCut } from './cut-result.ts';
import { type CutAim, type CutPlant, SHELTER_STEP } from './cut-types.ts';
import type { Cut } from './search-cuts.ts';

/** The site with some plants cut. */
export function cutDocument(
  document: SiteDocument,
  cuts: readonly { readonly id: FeatureId; readonly care: CareEvent }[],
): SiteDocument {
  const events = new Map(cuts.map(({ id, care }) => [id, care]));
  const features = document.features.map((feature) => {
    const care = events.get(feature.id);
    return care ? (withCare(feature as Parameters<typeof withCare>[0], care) as typeof feature) : feature;
  });
  return { ...document, features };
}

/** Cuts as they are listed: by the plants' names. */
export function proposedCuts(cuts: readonly Cut[], plants: readonly CutPlant[]): ProposedCut[] {
  return cuts
    .map(([plant, option]) => ({ plant: plants[plant], option: plants[plant].options[option] }))
    .sort((a, b) => a.plant.label.localeCompare(b.plant.label, 'en', { numeric: true }))
    .map((cut, i) => ({ letter: String.fromCharCode(65 + i), ...cut }));
}

const isSame = (way: CutWay, cuts: readonly ProposedCut[]): boolean =>
  way.cuts.length === cuts.length &&
  cuts.every(({ plant, option }) =>
    way.cuts.some((other) => other.plant.id === plant.id && other.option === option),
  );

/** Whether one of the ways is made of the same cuts. */
export const isAmong = (ways: readonly CutWay[], cuts: readonly ProposedCut[]): boolean =>
  ways.some((way) => isSame(way, cuts));

export const worksOf = ({ cuts }: Pick<CutWay, 'cuts'>): number =>
  cuts.reduce((sum, { option }) => sum + option.works, 0);

export const fellsNothing = ({ cuts }: Pick<CutWay, 'cuts'>): boolean =>
  cuts.every(({ option }) => option.kind !== 'fell');

/**
 * Says of each way what it is best at by the figures of the engines, which have the last word over the search: of two
 * that are alike the first. A way that is best at nothing is left out.
 */
export function bestOfEach(ways: readonly CutWay[]): CutWay[] {
  if (ways.length === 0) return [];
  const least = (among: readonly CutWay[], figure: (way: CutWay) => number): CutWay | undefined =>
    among.reduce<CutWay | undefined>(
      (best, way) => (best === undefined || figure(way) < figure(best) - 1e-9 ? way : best),
      undefined,
    );
  const best: readonly (readonly [CutAim, CutWay | undefined])[] = [
    ['fewest', least(ways, worksOf)],
    ['crop', least(ways, ({ cropYearsLost }) => Math.round(cropYearsLost * 10))],
    ['shelter', least(ways, ({ windCut }) => Math.round((windCut.without - windCut.with) / SHELTER_STEP))],
    ['standing', least(ways.filter(fellsNothing), worksOf)],
  ];
  return ways
    .map((way) => ({ ...way, aims: best.filter(([, at]) => at === way).map(([aim]) => aim) }))
    .filter(({ aims }) => aims.length > 0);
}
