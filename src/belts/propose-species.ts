/** Which species are tried in new belts, and how they stand in the wished year. */

import { ASH_DIEBACK, BLACK_LOCUST, CHERRY_LAUREL, SPREADS, THIRSTY_ROOTS, YEW } from '../plants/cautions.ts';
import { beltHabitOf } from '../plants/crown-density.ts';
import { speciesList } from '../plants/find-species.ts';
import type { Species } from '../plants/species.ts';
import { beltOrBlockAtYear } from '../scene/stand-at-year.ts';
import type { FeatureOf, SiteDocument } from '../site/document.ts';
import type { BeltPlant, WindSeason } from './propose-types.ts';

/** Never proposed: listed as invasive somewhere, deadly to stock, or dying. A person may still draw them. */
const NEVER: readonly string[] = [SPREADS, BLACK_LOCUST, CHERRY_LAUREL, YEW, ASH_DIEBACK];
/** Roles that are planted for shelter: shelter, nurse, shrub. */
const ROLES = new Set(['S', 'A', 'U']);
/** Shelter reaches farthest behind a belt through which so much daylight shows (common practice, no source). */
const BEST_POROSITY = 0.45;
/** A belt no taller than this in the wished year is not worth its ground (common practice, no source). */
const LEAST_HEIGHT_M = 2;
/** Heights that are tried, against the tallest there is of the same leaf habit. */
const HEIGHT_SHARES = [1, 0.65, 0.35] as const;
/** Species that may be mixed: heights within a fifth, daylight within a tenth. Common practice, no source. */
const LIKE_HEIGHT = 0.2;
const LIKE_POROSITY = 0.1;

const plannedBelt = (document: SiteDocument, species: Species): FeatureOf<'belt'> => ({
  type: 'Feature',
  id: 'tried',
  geometry: {
    type: 'LineString',
    coordinates: [
      [0, 0],
      [0, 0],
    ],
  },
  properties: {
    kind: 'belt',
    status: 'planned',
    species: species.botanicalName,
    plantedYear: document.site.baseYear,
  },
});

interface Tried {
  readonly species: Species;
  readonly heightM: number;
  readonly score: number;
}

/**
 * Up to six species: evergreen and leaf-dropping, each tall, middling and low by the end of the wished year, those
 * nearest to the best porosity, narrow, and feeding the ground first.
 */
export function beltPlants(document: SiteDocument, year: number, season: WindSeason): BeltPlant[] {
  const { species: siteSpecies } = document.site;
  const tried = speciesList(siteSpecies).all.flatMap((species): Tried[] => {
    if (!species.belt || !ROLES.has(species.role)) return [];
    if (species.cautions.some((caution) => NEVER.includes(caution))) return [];
    const stand = beltOrBlockAtYear(document, plannedBelt(document, species), {
      year,
      layout: null,
      pace: 'usual',
    });
    if (!stand || stand.heightM < LEAST_HEIGHT_M) return [];
    const { porosityOn, porosityOff, widthM, heightM } = stand;
    const porosity =
      season === 'growing' ? porosityOn : season === 'rest' ? porosityOff : (porosityOn + porosityOff) / 2;
    const score =
      Math.abs(porosity - BEST_POROSITY) +
      widthM / 20 +
      species.cautions.length / 20 -
      (species.fixesNitrogen ? 0.1 : 0);
    return [{ species, heightM, score }];
  });
  const chosen = new Set<Tried>();
  for (const evergreen of [false, true]) {
    const habit = tried.filter(({ species }) => (species.leafClass === 'evergreen') === evergreen);
    const tallestM = Math.max(0, ...habit.map(({ heightM }) => heightM));
    for (const share of HEIGHT_SHARES) {
      const near = ({ heightM, score }: Tried) => score + 2 * Math.abs(heightM / tallestM - share);
      const best = habit.filter((one) => !chosen.has(one)).sort((a, b) => near(a) - near(b))[0];
      if (best) chosen.add(best);
    }
  }
  return [...chosen]
    .sort((a, b) => b.heightM - a.heightM)
    .map(({ species, heightM }): BeltPlant => {
      const habit = beltHabitOf(species);
      return {
        species: species.botanicalName,
        commonName: species.commonName,
        heightM,
        widthM: habit.widthM,
        porosityOn: habit.opticalPorosityLeafOn,
        porosityOff: habit.opticalPorosityLeafOff,
        matureHeightM: species.curve.maxHeightM,
        thirsty: species.cautions.includes(THIRSTY_ROOTS),
        mixedWith: mixIn(species, heightM, tried),
        cautions: species.cautions,
      };
    });

  function mixIn(species: Species, heightM: number, all: readonly Tried[]): BeltPlant['mixedWith'] {
    const habit = beltHabitOf(species);
    const like = all.filter((other) => {
      const theirs = beltHabitOf(other.species);
      return (
        other.species !== species &&
        (!other.species.cautions.includes(THIRSTY_ROOTS) || species.cautions.includes(THIRSTY_ROOTS)) &&
        (other.species.leafClass === 'evergreen') === (species.leafClass === 'evergreen') &&
        Math.abs(other.heightM / heightM - 1) <= LIKE_HEIGHT &&
        Math.abs(theirs.opticalPorosityLeafOn - habit.opticalPorosityLeafOn) <= LIKE_POROSITY &&
        Math.abs(theirs.opticalPorosityLeafOff - habit.opticalPorosityLeafOff) <= LIKE_POROSITY
      );
    });
    // Another genus first: what kills one species often spares it.
    const genus = (one: Species) => one.botanicalName.split(' ')[0];
    const ranked = like.sort(
      (a, b) =>
        Number(genus(a.species) === genus(species)) - Number(genus(b.species) === genus(species)) ||
        a.score - b.score,
    );
    const best = ranked[0]?.species;
    return best
      ? { species: best.botanicalName, commonName: best.commonName, cautions: best.cautions }
      : null;
  }
}
