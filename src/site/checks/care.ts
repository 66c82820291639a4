import type { CareRecord } from '../records/care.ts';
import { isWoody, type Woody } from '../woody.ts';
import { featureWords, type SiteCheck, type SiteProblem } from './problem.ts';

/** Care that comes too early or too late, cuts above any crown, and names that the catalogue does not know. */
export const checkCare: SiteCheck = (document, context) =>
  document.features.filter(isWoody).flatMap((feature): SiteProblem[] =>
    (feature.properties.care ?? []).flatMap((care, i) => {
      const found = [
        tooEarly(feature, care, document.site.baseYear),
        tooLate(feature, care),
        endsBeforeItBegins(care),
        lastYearAlone(care),
        tooHigh(feature, care, context),
        unknownSpecies(care, context),
        noShoots(feature, care, context),
      ];
      return found.flatMap((each): SiteProblem[] =>
        each
          ? [
              {
                level: each.level,
                featureId: feature.id,
                sentence: `${featureWords(feature)}: care[${i}].${each.words}`,
              },
            ]
          : [],
      );
    }),
  );

type Context = Parameters<SiteCheck>[1];
type Found = { readonly level: SiteProblem['level']; readonly words: string } | null;
const problem = (words: string): Found => ({ level: 'problem', words });
const note = (words: string): Found => ({ level: 'note', words });

function tooEarly({ properties: p }: Woody, { what, year }: CareRecord, baseYear: number): Found {
  const planted = p.plantedYear ?? (p.status === 'planned' && p.heightM === undefined ? baseYear : undefined);
  if (planted === undefined || year > planted) return null;
  const known = p.plantedYear === undefined ? 'the year the plan starts' : 'its plantedYear';
  return problem(
    `year is ${year} (${what}); expected a year after ${known}, ${planted}, so nothing is done then.`,
  );
}

function tooLate({ properties: p }: Woody, { what, year }: CareRecord): Found {
  if (p.removedYear !== undefined && year >= p.removedYear)
    return problem(
      `year is ${year} (${what}); expected a year before its removedYear, ${p.removedYear}, so nothing is done then.`,
    );
  const all = p.care ?? [];
  const ends = all.filter((each) => each.what === 'die' && each.year < year).map((each) => each.year);
  const end = Math.max(...ends);
  const follows =
    what === 'replace' ||
    all.some((each) => each.what === 'replace' && each.year >= end && each.year <= year);
  if (ends.length === 0 || follows) return null;
  return problem(
    `year is ${year} (${what}); expected a year before it dies, ${end}, so nothing is done then.`,
  );
}

const endsBeforeItBegins = ({ year, lastYear }: CareRecord): Found =>
  lastYear !== undefined && lastYear < year
    ? problem(`lastYear is ${lastYear}; expected its year, ${year}, or later, so nothing is done.`)
    : null;

const lastYearAlone = ({ lastYear, everyYears, year }: CareRecord): Found =>
  lastYear !== undefined && everyYears === undefined && lastYear > year
    ? note(`lastYear is ${lastYear} but everyYears is missing; without it it is done once, in ${year}.`)
    : null;

/** The names of the species that may stand there in a year: its own, and those it was replaced with. */
const speciesBefore = ({ properties: { species, care = [] } }: Woody, year: number): string | undefined =>
  care
    .filter((each) => each.what === 'replace' && each.year < year && typeof each.species === 'string')
    .toSorted((a, b) => a.year - b.year)
    .map((each) => each.species as string)
    .at(-1) ?? species;

function tooHigh(feature: Woody, care: CareRecord, { knowsSpecies }: Context): Found {
  if (care.what !== 'pollard' && care.what !== 'cutTo' && care.what !== 'raiseCrown') return null;
  const species = speciesBefore(feature, care.year);
  const matureM = species === undefined ? null : knowsSpecies?.(species).matureHeightM;
  const mostM = Math.max(matureM ?? Number.POSITIVE_INFINITY, feature.properties.heightM ?? 0);
  return care.heightM >= mostM
    ? problem(
        `heightM is ${care.heightM} (${care.what}); expected less than it ever grows, ${Math.round(mostM * 10) / 10} (metres), so nothing is cut.`,
      )
    : null;
}

function unknownSpecies(care: CareRecord, { knowsSpecies }: Context): Found {
  if (care.what !== 'replace' || care.species === undefined) return null;
  const answer = knowsSpecies?.(care.species);
  if (!answer || answer.known) return null;
  const meant = answer.suggestion ? `; did you mean ${JSON.stringify(answer.suggestion)}?` : '.';
  return problem(
    `species is ${JSON.stringify(care.species)}; expected a botanical name of the catalogue or of the site's own species, so what is planted does not grow${meant}`,
  );
}

function noShoots(feature: Woody, { what, year }: CareRecord, { knowsSpecies }: Context): Found {
  if (what !== 'coppice' && what !== 'pollard') return null;
  const species = speciesBefore(feature, year);
  if (species === undefined || knowsSpecies?.(species).shootsAgain !== false) return null;
  return note(`what is ${JSON.stringify(what)}, but ${species} does not shoot again; it counts as its end.`);
}
