import {
  LEAST_VIGOUR,
  type MeasuredPlant,
  MOST_VIGOUR,
  type PlantVigour,
  plantVigour,
} from './plant-vigour.ts';

/**
 * Vigour of a site and of each species on it from measured plants, in two stages of the normal model (logarithms of
 * vigour): plants scatter about their species, species about the site, and the site about 1. Each mean is weighted by
 * the inverse of its variance and so drawn towards the level above it, the more the fewer plants there are
 * (shrinkage: Efron & Morris 1975, Journal of the American Statistical Association 70:311-319; the same is done to fit
 * a forester's height curve to a stand from a few sample trees: Lappi 1991, Forest Science 37:781-801; both from memory).
 *
 * The spreads are standard deviations of logarithms; common practice, no source.
 */
export const SPREADS = {
  /** Of plants of one species on one site. */
  plants: 0.15,
  /** Of species on one site, against what each does on usual ground. */
  species: 0.15,
  /** Of sites. */
  sites: 0.3,
} as const;

/** Plants from which a site's vigour is said, and a species' own: our choice. */
export const FEWEST_PLANTS = 3;
const FEWEST_OF_SPECIES = 2;

/** A mean of logarithms and its variance. */
interface Mean {
  readonly log: number;
  readonly variance: number;
}

const mean = (parts: readonly Mean[]): Mean => {
  const weight = parts.reduce((sum, { variance }) => sum + 1 / variance, 0);
  return {
    log: parts.reduce((sum, { log, variance }) => sum + log / variance, 0) / weight,
    variance: 1 / weight,
  };
};

export interface FittedVigour {
  readonly vigour: number;
  /** One standard error, as a share of it. */
  readonly errorShare: number;
  readonly plants: number;
}

export interface VigourFit {
  readonly site: FittedVigour;
  /** Vigour against the site's, by species; only where enough plants of it were measured. */
  readonly species: ReadonlyMap<string, FittedVigour>;
}

interface Told {
  readonly species: string;
  readonly said: PlantVigour;
}

const bounded = (vigour: number): number => Math.min(MOST_VIGOUR, Math.max(LEAST_VIGOUR, vigour));

function fitTold(told: readonly Told[]): VigourFit {
  const bySpecies = new Map<string, Mean[]>();
  for (const { species, said } of told) {
    const own = { log: said.logVigour, variance: said.variance + SPREADS.plants ** 2 };
    bySpecies.set(species, [...(bySpecies.get(species) ?? []), own]);
  }
  const ownMeans = new Map([...bySpecies].map(([name, plants]) => [name, mean(plants)] as const));
  const between = SPREADS.species ** 2;
  const site = mean([
    { log: 0, variance: SPREADS.sites ** 2 },
    ...[...ownMeans.values()].map(({ log, variance }) => ({ log, variance: variance + between })),
  ]);
  const species = new Map<string, FittedVigour>();
  for (const [name, own] of ownMeans) {
    const plants = bySpecies.get(name)?.length ?? 0;
    if (plants < FEWEST_OF_SPECIES) continue;
    const drawn = mean([own, { log: site.log, variance: between }]);
    const vigour = bounded(Math.exp(drawn.log - site.log));
    species.set(name, { vigour, errorShare: Math.sqrt(drawn.variance), plants });
  }
  return {
    site: { vigour: bounded(Math.exp(site.log)), errorShare: Math.sqrt(site.variance), plants: told.length },
    species,
  };
}

/** Plants that say something, each with what it says. */
const toldBy = (plants: readonly MeasuredPlant[]): (Told | null)[] =>
  plants.map((plant) => {
    const said = plantVigour(plant);
    return Number.isFinite(said.variance) ? { species: plant.species, said } : null;
  });

const isTold = (told: Told | null): told is Told => told !== null;

/** Null: fewer than three plants say something. */
export function fitVigour(plants: readonly MeasuredPlant[]): VigourFit | null {
  const told = toldBy(plants).filter(isTold);
  return told.length < FEWEST_PLANTS ? null : fitTold(told);
}

/** Vigour of a plant, site times species. @param otherwise that of a species of which too few were measured. */
export const vigourOf = ({ site, species }: VigourFit, name: string, otherwise = 1): number =>
  site.vigour * (species.get(name)?.vigour ?? otherwise);

/** For each plant the vigour that the others alone give it; null where too few are left. */
export function vigoursWithoutEach(plants: readonly MeasuredPlant[]): (number | null)[] {
  const told = toldBy(plants);
  return plants.map((plant, left) => {
    const others = told.filter((each, i): each is Told => i !== left && isTold(each));
    return others.length < FEWEST_PLANTS ? null : vigourOf(fitTold(others), plant.species);
  });
}
