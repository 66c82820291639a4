/** What may be done to each plant that is the person's own. */
import type { CareEvent } from '../growth/care.ts';
import { findSpecies } from '../plants/find-species.ts';
import type { Species } from '../plants/species.ts';
import type { GrowthMoment } from '../scene/options.ts';
import { ownersOf } from '../scene/owners.ts';
import { beltOrBlockAtYear, treeAtYear } from '../scene/stand-at-year.ts';
import { labelOf } from '../scene/things.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { FeatureOf, SiteDocument } from '../site/document.ts';
import { cropYearsLost } from './crop-lost.ts';
import { type CutKind, type CutOption, type CutPlant, type CutWish, YEARS_TO_KEEP } from './cut-types.ts';

/** Thinning takes no more than this of the foliage at once. Common practice, no source. */
const MOST_THINNED_SHARE = 0.3;
/** A thinned crown closes within a few years: it is thinned again after so many. Common practice, no source. */
const THIN_AGAIN_YEARS = 3;
/** A crown is raised by no more than to this share of the height. Common practice, no source. */
const MOST_RAISED_SHARE = 1 / 3;
/** Heights are worked to half metres. */
const HEIGHT_STEP_M = 0.5;
/** Raising by less is not worth a ladder. */
const LEAST_RAISED_M = 0.5;
/** Height of a pollard's head: above what grazes. Common practice, no source. */
const POLLARD_M = 2.5;
/** A lower plant is not cut at all: it takes little light, and what is cut of it is back at once. Our choice. */
const LEAST_HEIGHT_M = 2;

type Woody = FeatureOf<'tree' | 'belt' | 'block'>;

/** Upright extent and foliage of a plant, m and a measure of how much of it there is. */
interface Body {
  readonly heightM: number;
  readonly baseM: number;
  readonly foliage: number;
}

const isWoody = (feature: { readonly properties: { readonly kind: string } }): feature is Woody =>
  ['tree', 'belt', 'block'].includes(feature.properties.kind);

/** Null: it does not stand in that year. */
function bodyAt(document: SiteDocument, feature: Woody, moment: GrowthMoment): Body | null {
  if (feature.properties.kind === 'tree') {
    const stand = treeAtYear(document, feature as FeatureOf<'tree'>, moment);
    if (!stand) return null;
    const { heightM, baseM, radiusM, depthPerMOn } = stand;
    return { heightM, baseM, foliage: radiusM ** 2 * (heightM - baseM) * depthPerMOn };
  }
  const stand = beltOrBlockAtYear(document, feature as FeatureOf<'belt' | 'block'>, moment);
  if (!stand) return null;
  const { heightM, baseM, depthPerMOn } = stand;
  return { heightM, baseM, foliage: (heightM - baseM) * depthPerMOn };
}

/** The same feature with one more thing done to it. */
export const withCare = (feature: Woody, care: CareEvent): Woody =>
  ({
    ...feature,
    properties: { ...feature.properties, care: [...(feature.properties.care ?? []), care] },
  }) as Woody;

const downToStep = (metres: number): number => Math.floor(metres / HEIGHT_STEP_M + 1e-9) * HEIGHT_STEP_M;

/** What may be done to a plant, gentlest first, before its costs are known. */
function eventsFor(
  feature: Woody,
  species: Species | null,
  { heightM, baseM }: Body,
  year: number,
): { readonly kind: CutKind; readonly care: CareEvent }[] {
  const { kind } = feature.properties;
  const thin = { what: 'thin', year, share: MOST_THINNED_SHARE } as const;
  const lastYear = year + YEARS_TO_KEEP;
  const found: { kind: CutKind; care: CareEvent }[] = [
    { kind: 'thin', care: thin },
    { kind: 'thin', care: { ...thin, everyYears: THIN_AGAIN_YEARS, lastYear } },
  ];
  if (kind !== 'block') {
    const mostM = downToStep(heightM * MOST_RAISED_SHARE);
    const halfM = downToStep((baseM + mostM) / 2);
    for (const heightToM of new Set([halfM, mostM]))
      if (heightToM >= baseM + LEAST_RAISED_M)
        found.push({ kind: 'raiseCrown', care: { what: 'raiseCrown', year, heightM: heightToM } });
  }
  // The shoots of a grafted tree's stump are those of its rootstock.
  const isGrafted = 'rootstock' in feature.properties || 'variety' in feature.properties;
  if (species?.shootsAgain && !isGrafted) {
    if (kind === 'tree' && heightM >= 2 * POLLARD_M)
      found.push({ kind: 'pollard', care: { what: 'pollard', year, heightM: POLLARD_M } });
    found.push({ kind: 'coppice', care: { what: 'coppice', year } });
  }
  // A whole wood is not felled for a patch.
  if (kind !== 'block') found.push({ kind: 'fell', care: { what: 'die', year } });
  return found;
}

function optionOf(
  document: SiteDocument,
  feature: Woody,
  species: Species | null,
  moment: GrowthMoment,
  { kind, care }: { readonly kind: CutKind; readonly care: CareEvent },
): CutOption {
  const cut = withCare(feature, care);
  const crownShare = (later: number): number => {
    const then = { ...moment, year: moment.year + later };
    const before = bodyAt(document, feature, then)?.foliage ?? 0;
    return before > 0 ? (bodyAt(document, cut, then)?.foliage ?? 0) / before : 1;
  };
  const { everyYears, lastYear, year } = care;
  return {
    kind,
    care,
    works: everyYears && lastYear ? 1 + Math.floor((lastYear - year) / everyYears) : 1,
    takenShare: 1 - crownShare(0),
    cropYearsLost:
      feature.properties.kind === 'tree'
        ? cropYearsLost({
            year,
            plantedYear: feature.properties.plantedYear,
            yearsToBear: species?.yearsToBear ?? null,
            beginsAnew: kind === 'pollard' || kind === 'coppice' || kind === 'fell',
            crownShare: kind === 'fell' ? () => 0 : crownShare,
          })
        : 0,
  };
}

/**
 * The plants that may be cut: those that stand in the first season, are not somebody else's and were not refused.
 * @param moment how things grow; its year is the first season
 */
export function cutPlants(document: SiteDocument, wish: CutWish, moment: GrowthMoment): CutPlant[] {
  const owners = ownersOf(document);
  const calendarYear = document.site.baseYear + wish.year;
  return chosenFeatures(document, moment.layout).flatMap((feature): CutPlant[] => {
    const isGone = moment.felled?.ids.includes(feature.id) && wish.year >= moment.felled.fromYear;
    if (!isWoody(feature) || isGone || owners.has(feature.id) || wish.refused.includes(feature.id)) return [];
    const body = bodyAt(document, feature, moment);
    if (!body || body.heightM < LEAST_HEIGHT_M) return [];
    const species = findSpecies(feature.properties.species, document.site.species);
    const { kind } = feature.properties;
    return [
      {
        id: feature.id,
        label: labelOf(document, feature),
        kind,
        heightM: body.heightM,
        bearsCrop: kind === 'tree' && (species?.yearsToBear ?? null) !== null,
        options: eventsFor(feature, species, body, calendarYear).map((event) =>
          optionOf(document, feature, species, moment, event),
        ),
      },
    ];
  });
}
