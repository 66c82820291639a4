import { shelterScene } from '../scene/build-scene.ts';
import type { GrowthSpeeds, SceneOptions } from '../scene/options.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { LIVE_DIRECTIONS_A_SECTOR } from '../wind/shelter-directions.ts';
import type { ShelterOptions } from '../wind/shelter-types.ts';
import { growingPlants, YEARS } from '../years/growing-plants.ts';
import { growthSpeed, shelterEffectOf } from '../years/shelter-effect.ts';
import { cutAtPlants, windPlaces } from '../years/wind-places.ts';
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
    const { things } = built;
    const scene = withGroundNear(built.scene, grids);
    const standing = new Map(things.map(({ id }, thing) => [id, thing]));
    const there = places.filter(({ readers }) => readers.some(({ id }) => standing.has(id)));
    const shares = Array.from({ length: Math.min(runner.threads, there.length) }, (_, i) =>
      there.filter((_, k) => k % runner.threads === i),
    );
    const cuts = await runParts(
      shares,
      () => 1,
      { signal: run.signal },
      async (part, options) => {
        const results = await runner.run(
          'shelter-on-grids',
          {
            ...READING,
            options: shelter,
            scene,
            directionsASector: LIVE_DIRECTIONS_A_SECTOR,
            places: part.map(({ grid, without }) => ({
              grid,
              without: without === null ? null : (standing.get(without) ?? null),
            })),
          },
          options,
        );
        return part.map((place, i) => cutAtPlants(place, results[i].windShare));
      },
    );
    for (const [id, cut] of cuts.flat().flatMap((found) => [...found])) {
      // Until the next season has its own pace it is taken to grow on at this one.
      if (standing.has(id)) speeds.get(id)?.fill(growthSpeed(cut, fullEffect), year);
    }
    run.onProgress?.((year + 1) / YEARS.length);
  }
  return speeds;
}

/** The pace of each plant as its site reckons with it; null where shelter is not reckoned to speed growth. */
export async function runGrowthSpeeds(
  runner: JobRunner,
  request: Omit<StepYearsRequest, 'fullEffect'>,
  run: RunOptions = {},
): Promise<GrowthSpeeds | null> {
  const { usual } = shelterEffectOf(request.document.site);
  return usual === 1 ? null : runStepYears(runner, { ...request, fullEffect: usual }, run);
}
