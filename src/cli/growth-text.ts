import { COMMON_PRACTICE, SPREAD_SOURCE } from '../plants/sources.ts';
import { leafWords, readMissWords, VIGOUR_RULE, vigourSentences } from '../scene/growth-words.ts';
import type { ComparedReading, SiteVigour } from '../scene/site-vigour.ts';
import { type ByPace, PACES, type SpeciesGrowth } from '../scene/species-growth.ts';
import { csvCell } from './csv-cell.ts';

export interface GrowthPage {
  readonly siteName: string;
  readonly layout: string | null;
  readonly vigour: SiteVigour;
  readonly species: readonly SpeciesGrowth[];
}

const metres = (lengthM: number): string => `${lengthM.toFixed(1)} m`;
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const band = ({ slow, usual, fast }: ByPace): string =>
  fast - slow > 0.05 ? `${metres(usual)} (${slow.toFixed(1)}–${fast.toFixed(1)})` : metres(usual);
const whenOf = ({ reading }: Pick<ComparedReading, 'reading'>): string =>
  reading.date ?? `end of ${reading.year}`;

/** Text for a person, metres. */
export function growthText({ siteName, layout, vigour, species }: GrowthPage, csv: string | null): string {
  const lines = [`${siteName}${layout === null ? '' : `, layout ${layout}`}: how fast things grow here`];
  lines.push('', ...vigourSentences(vigour));
  for (const read of vigour.readings) {
    const then =
      read.fittedM === null || !vigour.isNews ? '' : `, with what they say ${metres(read.fittedM)}`;
    lines.push(
      `  ${read.label}, ${read.plantedYear === null ? 'year of planting not known' : `planted ${read.plantedYear}`}, read ${whenOf(read)}: ${metres(read.reading.heightM)}, expected ${metres(read.expectedM)}, miss ${readMissWords(read, metres)}${then}`,
    );
  }
  for (const each of vigour.left)
    lines.push(
      `  ${each.label}, ${metres(each.reading.heightM)} (${whenOf(each)}) tells nothing: ${each.why}.`,
    );
  if (vigour.readings.length > 0) lines.push(VIGOUR_RULE);
  for (const growth of species) lines.push('', ...speciesLines(growth));
  if (csv !== null) lines.push('', `Written to ${csv}`);
  return `${lines.join('\n')}\n`;
}

function speciesLines({
  species,
  rootstock,
  vigour,
  sizes,
  leaves,
  winterShare,
  belt,
}: SpeciesGrowth): string[] {
  const name = `${species.commonName} (${species.botanicalName})`;
  const bears = species.yearsToBear;
  return [
    `${name}${rootstock ? ` on ${rootstock.name}, ${percent(rootstock.sizeFactor)} of full size [${rootstock.source}]` : ''}: ${percent(vigour)} of its usual size at every age`,
    ...sizes.map(
      ({ seasons, heightM, spreadM }) =>
        `  ${String(seasons).padStart(2)} years after planting: ${band(heightM)} tall, ${band(spreadM)} wide`,
    ),
    `  ${leafWords(leaves, winterShare)} [${COMMON_PRACTICE}]`,
    ...(bears === null ? [] : [`  First crop after ${bears} years. [${COMMON_PRACTICE}]`]),
    `  Full-grown on usual ground: ${metres(species.curve.maxHeightM)} tall [${species.heightSource}], ${metres(species.spread.matureSpreadM)} wide [${SPREAD_SOURCE}]`,
    `  Pace of the curve: [${species.curveSource}]`,
    `  Daylight through a crown: ${percent(species.transmittance.leafOn)} in leaf, ${percent(species.transmittance.leafOff)} bare [${species.transmittance.source}]; through a belt: ${percent(belt.opticalPorosityLeafOn)} and ${percent(belt.opticalPorosityLeafOff)} [${belt.source}]`,
  ];
}

const round = (value: number): number => Math.round(value * 1000) / 1000;
const rounded = ({ slow, usual, fast }: ByPace): ByPace => ({
  slow: round(slow),
  usual: round(usual),
  fast: round(fast),
});

/** The same as data; lengths in metres, days from 0 = 1 January, shares 0 to 1. */
export function growthJson({ siteName, layout, vigour, species }: GrowthPage): string {
  const { fit } = vigour;
  const answer = {
    site: siteName,
    layout,
    vigour: {
      now: vigour.now,
      plants: vigour.plants,
      says: vigourSentences(vigour),
      site: fit && { vigour: round(fit.site.vigour), errorShare: round(fit.site.errorShare) },
      species: (fit?.species ?? []).map((each) => ({
        species: each.species,
        plants: each.plants,
        vigour: round(each.vigour),
        errorShare: round(each.errorShare),
      })),
      missBefore: vigour.before,
      missAfter: vigour.after,
      missOfPlantsNotTold: vigour.untold,
      readings: vigour.readings.map((read) => ({
        of: read.of,
        label: read.label,
        species: read.species,
        plantedYear: read.plantedYear,
        date: read.reading.date,
        measuredYear: read.reading.year,
        heightM: read.reading.heightM,
        expectedM: round(read.expectedM),
        missM: round(read.reading.heightM - read.expectedM),
        missShare: round(read.reading.heightM / read.expectedM - 1),
        expectedWithFitM: read.fittedM === null ? null : round(read.fittedM),
      })),
      tellNothing: vigour.left.map(({ of, label, reading, why }) => ({
        of,
        label,
        heightM: reading.heightM,
        date: reading.date,
        measuredYear: reading.year,
        why,
      })),
    },
    species: species.map((growth) => ({
      species: growth.species.botanicalName,
      commonName: growth.species.commonName,
      rootstock: growth.rootstock?.name ?? null,
      vigour: round(growth.vigour),
      sizes: growth.sizes.map(({ seasons, heightM, spreadM }) => ({
        yearsAfterPlanting: seasons,
        heightM: rounded(heightM),
        spreadM: rounded(spreadM),
      })),
      yearsToBear: growth.species.yearsToBear,
      leafClass: growth.species.leafClass,
      leaves: growth.leaves,
      winterLeafShare: growth.winterShare,
      sources: {
        height: growth.species.heightSource,
        curve: growth.species.curveSource,
        spread: SPREAD_SOURCE,
        leaves: COMMON_PRACTICE,
        yearsToBear: COMMON_PRACTICE,
        transmittance: growth.species.transmittance.source,
        belt: growth.belt.source,
        rootstock: growth.rootstock?.source ?? null,
      },
    })),
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

const CSV_HEAD =
  'species,common_name,rootstock,pace,years_after_planting,height_m,spread_m,height_source,curve_source';

/** One row for each species, pace and age. */
export function growthCsv({ species }: GrowthPage): string {
  const rows = species.flatMap(
    ({ species: { botanicalName, commonName, heightSource, curveSource }, rootstock, sizes }) =>
      sizes.flatMap(({ seasons, heightM, spreadM }) =>
        PACES.map((pace) =>
          [
            botanicalName,
            commonName,
            rootstock?.name ?? '',
            pace,
            seasons,
            round(heightM[pace]),
            round(spreadM[pace]),
            heightSource,
            curveSource,
          ]
            .map(csvCell)
            .join(','),
        ),
      ),
  );
  return `${[CSV_HEAD, ...rows].join('\n')}\n`;
}
