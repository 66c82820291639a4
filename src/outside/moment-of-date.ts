import type { GrowthMoment } from '../scene/options.ts';
import { siteCentre } from '../scene/site-ground.ts';
import type { SiteDocument } from '../site/document.ts';
import { defaultGrowingSeason } from '../site/records/site.ts';
import { BadInputError } from '../units/bad-input.ts';

/** The calendar year in which the last growing season began that had ended by a day (YYYY-MM-DD). */
function lastSeasonYear(document: SiteDocument, date: string): number {
  const season = document.site.growingSeason ?? defaultGrowingSeason(siteCentre(document)[1]);
  const overNewYear = season.lastDay < season.firstDay;
  const year = Number(date.slice(0, 4));
  const ended = date.slice(5, 10) > season.lastDay;
  return year - (ended ? 0 : 1) - (overNewYear ? 1 : 0);
}

interface Lived {
  readonly status?: 'existing' | 'planned';
  readonly measuredYear?: number;
  readonly plantedYear?: number;
  readonly removedYear?: number;
  readonly fromYear?: number;
  readonly toYear?: number;
}

interface Life {
  /** First year in which it is there; undefined: it always was. */
  readonly begins?: number;
  /** First year in which it is there no more; undefined: it stays. */
  readonly ends?: number;
  /** Year of the size that is known. */
  readonly known: number;
}

function lifeOf({ site }: SiteDocument, feature: { readonly properties: object }): Life {
  const lived = feature.properties as Lived;
  return {
    begins: lived.plantedYear ?? lived.fromYear ?? (lived.status === 'planned' ? site.baseYear : undefined),
    ends: lived.removedYear ?? (lived.toYear === undefined ? undefined : lived.toYear + 1),
    known: lived.measuredYear ?? lived.plantedYear ?? lived.fromYear ?? site.baseYear,
  };
}

const momentOf = (
  document: SiteDocument,
  { known }: Life,
  date: string,
  layout: string | null,
): GrowthMoment => ({
  year: Math.max(lastSeasonYear(document, date), known) - document.site.baseYear,
  layout,
  pace: 'usual',
});

/**
 * The moment of growth at which a thing's size is that of a day: as it was measured, plus the growing seasons that
 * have ended since. A height that was measured later than that is taken as it is, never shrunk back. Null: it does not
 * stand on that day.
 */
export function momentOnDay(
  document: SiteDocument,
  feature: { readonly properties: object },
  date: string,
  layout: string | null,
): GrowthMoment | null {
  const year = Number(date.slice(0, 4));
  const life = lifeOf(document, feature);
  const { begins = year, ends = year + 1 } = life;
  return year < begins || year >= ends ? null : momentOf(document, life, date, layout);
}

/**
 * The same of a thing that is asked for.
 * @param does what it is expected to do: "casts a shadow".
 * @throws BadInputError when the thing does not stand on that day.
 */
export function momentOfDate(
  document: SiteDocument,
  feature: { readonly properties: object },
  date: string,
  { label, does }: { readonly label: string; readonly does: string },
  layout: string | null,
): GrowthMoment {
  const year = Number(date.slice(0, 4));
  const life = lifeOf(document, feature);
  const { begins, ends } = life;
  if (begins !== undefined && year < begins)
    throw new BadInputError(
      `${label} does not stand there before ${begins}; expected a thing that ${does} in ${year}, or a later date.`,
    );
  if (ends !== undefined && year >= ends)
    throw new BadInputError(
      `${label} is gone from ${ends} on; expected a thing that ${does} in ${year}, or an earlier date.`,
    );
  return momentOf(document, life, date, layout);
}

/** 0 for 1 January, of a day written YYYY-MM-DD. */
export const dayOfYear = (date: string): number =>
  Math.round(
    (Date.parse(`${date.slice(0, 10)}T00:00:00Z`) - Date.parse(`${date.slice(0, 4)}-01-01T00:00:00Z`)) /
      86_400_000,
  );
