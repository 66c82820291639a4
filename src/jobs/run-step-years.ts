import type { Pace } from '../growth/height-curve.ts';
import { shelterScene } from '../scene/build-scene.ts';
import type { GrowthSpeeds, SceneOptions } from '../scene/options.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { QUICK_FINENESS } from '../wind/fineness.ts';
import { ownDrag } from '../wind/own-drag.ts';
import type { ShelterOnGridsRequest, ShelterOptions } from '../wind/shelter-types.ts';
import { growingPlants, YEARS } from '../years/growing-plants.ts';
import { growthSpeed, shelterEffectOf } from '../years/shelter-effect.ts';
import { cutAtPlants, cutByOthers, type WindPlace, windPlaces } from '../years/wind-places.ts';
import { withGroundNear } from './ground-near.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { runParts } from './split-rows.ts';

/** How the wind at a plant is read: low down, as on the map; gales are not asked for. */
const READING = { readingHeightM: 1.5, galeMps: 10.8 };

export interface StepYearsRequest {
  readonly document: SiteDocument;
  /** Its year and speeds are not looked at. */
  readonly options: SceneOptions;
  /** Which guesses the shelter engine uses. */
  readonly shelter: ShelterOptions;
  /** Growth in full shelter against the open, 1 to 2. */
  readonly fullEffect: number;
}

/**
 * Growth and shelter stepped together: each season's wind, as what stands by its end leaves it, sets how fast every
 * plant grew in it, and what it grew to shelters the next. A season begins with last season's pace, and takes its own
 * from the wind that this gives.
 * @returns the pace of each season of each plant that grows.
 */
export async function runStepYears(
  runner: JobRunner,
  { document, options, shelter, fullEffect }: StepYearsRequest,
  run: RunOptions = {},
): Promise<GrowthSpeeds> {
  if (fullEffect === 1) return new Map();
  const places = windPlaces(growingPlants(document, { ...options, speeds: null }), options.frame);
  const speeds = new Map<FeatureId, Float32Array>(
    places.flatMap(({ readers }) =>
      readers.map(({ id }) => [id, new Float32Array(YEARS.length).fill(1)] as const),
    ),
  );
  const grids = places.map(({ grid }) => grid);
  for (const year of YEARS) {
    const built = shelterScene(document, { ...options, year, speeds });
    const scene = withGroundNear(built.scene, grids);
    const standing = new Map(built.things.map(({ id }, thing) => [id, thing]));
    const request = { ...READING, scene, options: shelter };
    const there = places.filter(({ readers }) => readers.some(({ id }) => standing.has(id)));
    const read = await readWinds(runner, request, there, standing, run.signal);
    const own = ownDrag(request);
    const crownOf = new Map(
      Array.from(scene.crowns.thing.subarray(0, scene.crowns.count), (thing, i) => [thing, i]),
    );
    for (const [id, speed] of speeds) {
      const thing = standing.get(id);
      if (thing === undefined) continue;
      const crown = crownOf.get(thing);
      const withTrees = read.withTrees.get(id) ?? 0;
      const cut =
        crown === undefined ? withTrees : cutByOthers(withTrees, read.withoutTrees.get(id) ?? 0, own[crown]);
      // Until the next season has its own pace it is taken to grow on at this one.
      speed.fill(growthSpeed(cut, fullEffect), year);
    }
    run.onProgress?.((year + 1) / YEARS.length);
  }
  return speeds;
}

/** Shares by which the wind of plants is cut in the growing season, by their ids. */
interface WindsRead {
  readonly withTrees: ReadonlyMap<FeatureId, number>;
  readonly withoutTrees: ReadonlyMap<FeatureId, number>;
}

/** Reads the wind at all places, shared out among the threads. @param standing what the scene numbers each thing. */
async function readWinds(
  runner: JobRunner,
  request: Omit<ShelterOnGridsRequest, 'places'>,
  places: readonly WindPlace[],
  standing: ReadonlyMap<FeatureId, number>,
  signal: AbortSignal | undefined,
): Promise<WindsRead> {
  const shares = Array.from({ length: Math.min(runner.threads, places.length) }, (_, i) =>
    places.filter((_, k) => k % runner.threads === i),
  );
  const cuts = await runParts(
    shares,
    () => 1,
    { signal },
    async (part, options) => {
      const asked = part.map(({ grid, trees, without }) => ({
        grid,
        trees,
        without: without === null ? null : (standing.get(without) ?? null),
      }));
      const results = await runner.run(
        'shelter-on-grids',
        { ...request, fineness: QUICK_FINENESS, places: asked },
        options,
      );
      return part.map((place, i) => ({ trees: place.trees, cut: cutAtPlants(place, results[i].windShare) }));
    },
  );
  const joined = (trees: boolean) =>
    new Map(cuts.flat().flatMap((found) => (found.trees === trees ? [...found.cut] : [])));
  return { withTrees: joined(true), withoutTrees: joined(false) };
}

/** How fast plants grow at each pace of growth; worked out when it is first asked for, and kept. */
export type PaceSpeeds = (pace: Pace, run?: RunOptions) => Promise<GrowthSpeeds | null>;

/**
 * The ends of what is not known of growth: slow growth that shelter does nothing for, usual growth as the site reckons
 * with it, fast growth with the most that is thought possible.
 * @param request its options' pace is not looked at.
 */
export function paceSpeeds(runner: JobRunner, request: Omit<StepYearsRequest, 'fullEffect'>): PaceSpeeds {
  const kept = new Map<Pace, GrowthSpeeds | null>([['slow', null]]);
  return async (pace, run = {}) => {
    const known = kept.get(pace);
    if (known !== undefined) return known;
    const { usual, most } = shelterEffectOf(request.document.site);
    const fullEffect = pace === 'fast' ? most : usual;
    const options = { ...request.options, pace };
    const speeds =
      fullEffect === 1 ? null : await runStepYears(runner, { ...request, options, fullEffect }, run);
    kept.set(pace, speeds);
    return speeds;
  };
}
