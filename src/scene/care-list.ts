import { type CareTime, careUpTo } from '../growth/care.ts';
import type { Pace } from '../growth/height-curve.ts';
import { plantingYear } from '../growth/standing-plant.ts';
import { careCautions } from '../plants/care-cautions.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { FeatureId, FeatureOf, SiteDocument } from '../site/document.ts';
import { isWoody, type Woody } from '../site/woody.ts';
import { kindAtYear } from './species-at-year.ts';
import { beltOrBlockAtYear, treeAtYear } from './stand-at-year.ts';
import { labelOf } from './things.ts';

/** One piece of work on one plant, in the winter before the season of `year`. */
export interface CareJob extends CareTime {
  readonly id: FeatureId;
  readonly kind: Woody['properties']['kind'];
  readonly label: string;
  /** Botanical name of what stands there before, as the file writes it; null: none is named. */
  readonly standing: string | null;
  /** At usual growth, at the end of the season before; null: the place is empty. */
  readonly heightBeforeM: number | null;
  readonly cautions: readonly string[];
  /** True where the plant is too low for a cut: nothing is taken. */
  readonly needless: boolean;
}

/** Height at the end of a calendar year's season, m; null: it does not stand. */
export function heightAt(
  document: SiteDocument,
  feature: Woody,
  calendarYear: number,
  pace: Pace = 'usual',
): number | null {
  const moment = { year: calendarYear - document.site.baseYear, layout: null, pace };
  const stand =
    feature.properties.kind === 'tree'
      ? treeAtYear(document, feature as FeatureOf<'tree'>, moment)
      : beltOrBlockAtYear(document, feature as FeatureOf<'belt' | 'block'>, moment);
  return stand?.heightM ?? null;
}

/** What is to be minded when a piece of work is done to a plant. */
export function workOn(
  document: SiteDocument,
  feature: Woody,
  { what, year, heightM, share }: CareTime,
): Pick<CareJob, 'standing' | 'heightBeforeM' | 'cautions' | 'needless'> {
  const { properties } = feature;
  const before = kindAtYear(document, feature, year - 1);
  const heightBeforeM = heightAt(document, feature, year - 1);
  const isCut = what === 'pollard' || what === 'cutTo';
  return {
    standing: before.name ?? null,
    heightBeforeM,
    needless: isCut && heightBeforeM !== null && heightBeforeM <= (heightM ?? 0),
    cautions: careCautions({
      what,
      heightM,
      share,
      species: before.species,
      heightBeforeM,
      isGrafted: properties.kind === 'tree' && properties.rootstock !== undefined && !before.isAnother,
    }),
  };
}

/**
 * All that is to be done to the plants of a layout from one calendar year to another, both included, by year. What
 * comes before a plant is planted, or after it is gone, is not to be done.
 */
export function careList(
  document: SiteDocument,
  layout: string | null,
  { fromYear, toYear }: { readonly fromYear: number; readonly toYear: number },
): CareJob[] {
  const jobs = chosenFeatures(document, layout)
    .filter(isWoody)
    .flatMap((feature) =>
      careUpTo(feature.properties.care, toYear)
        .filter(({ year }) => year >= fromYear)
        .map(
          (time): CareJob => ({
            ...time,
            id: feature.id,
            kind: feature.properties.kind,
            label: labelOf(document, feature, time.year - 1),
            ...workOn(document, feature, time),
          }),
        )
        .filter((job) => isToBeDone(feature, job, document.site.baseYear)),
    );
  return jobs.sort((a, b) => a.year - b.year);
}

/** An empty place is planted again; anything else needs a plant. */
function isToBeDone({ properties }: Woody, job: CareJob, baseYear: number): boolean {
  const { removedYear } = properties;
  if (removedYear !== undefined && job.year >= removedYear) return false;
  if (job.year <= (plantingYear(properties, baseYear) ?? Number.NEGATIVE_INFINITY)) return false;
  return job.what === 'replace' || job.heightBeforeM !== null;
}
