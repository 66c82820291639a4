import { beltNeededM } from '../choose/belt-needed.ts';
import type {
  Enough,
  FieldFound,
  FieldStateKey,
  ShelteredFrom,
  StateFigures,
  StateMaps,
} from '../choose/choose-types.ts';
import { type ColdAir, coldAirScene } from '../choose/cold-air.ts';
import { fieldStates, standsWithout } from '../choose/field-states.ts';
import { groundFigures, wetnessOf } from '../choose/ground-figures.ts';
import { nearEdges } from '../choose/near-edges.ts';
import { stateFigures } from '../choose/state-figures.ts';
import { localBoxOf } from '../geo/local-box.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import type { Pace } from '../growth/height-curve.ts';
import type { YearLight } from '../light/light-types.ts';
import { cellCount, type GridSpec, gridCovering } from '../numeric/grid.ts';
import { sameContent } from '../numeric/same-content.ts';
import { shelterScene } from '../scene/build-scene.ts';
import { lightYears } from '../scene/build-years.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { LIVE_DIRECTIONS_A_SECTOR } from '../wind/shelter-directions.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';
import { withGroundNear } from './ground-near.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { runFieldCut, type WindReading } from './run-field-cut.ts';

export interface ChooseRequest {
  readonly document: SiteDocument;
  /** Its year is not looked at. */
  readonly options: SceneOptions;
  readonly fields: readonly FieldFeature[];
  readonly cellM: number;
  readonly reading: WindReading;
  readonly lightHeightM: number;
  readonly enough: Enough;
}

export interface ChooseFound {
  readonly fields: readonly FieldFound[];
  readonly cold: ColdAir;
}

/** Half of a field in shelter counts as a field in shelter. */
const SHELTERED_SHARE = 0.5;
const LAST_YEAR = 40;
const PACES: readonly Pace[] = ['slow', 'usual', 'fast'];

/** All that is asked of each field before one is chosen; fields are worked out side by side. */
export async function runChoose(
  runner: JobRunner,
  request: ChooseRequest,
  run: RunOptions = {},
): Promise<ChooseFound> {
  const { document, options, fields } = request;
  const states = fieldStates(document, options);
  const stands = states.get('stands') as SceneOptions;
  const cold = await runner.run('cold-air', coldAirScene(document, stands), { signal: run.signal });
  const wetness = wetnessOf(cold);
  const done = fields.map(() => 0);
  const found = await Promise.all(
    fields.map(async (field, k): Promise<FieldFound> => {
      const one = await runField(runner, request, field, states, {
        signal: run.signal,
        onProgress: (share) => {
          done[k] = share;
          run.onProgress?.(done.reduce((sum, each) => sum + each, 0) / fields.length);
        },
      });
      const ground = groundFigures(
        document,
        field,
        options.frame,
        options.ground,
        cold,
        wetness,
        options.layout,
      );
      const standing = one.states.get('stands') as StateFigures;
      return {
        id: field.id,
        name: field.properties.name ?? String(field.id),
        ground,
        ...one,
        beltNeededM: beltNeededM(ground.areaM2, standing.shelterEnoughShare),
      };
    }),
  );
  return { fields: found, cold };
}

type FieldRun = Pick<FieldFound, 'grid' | 'mask' | 'states' | 'maps' | 'withoutEdges' | 'shelteredFrom'>;

async function runField(
  runner: JobRunner,
  request: ChooseRequest,
  field: FieldFeature,
  states: ReadonlyMap<FieldStateKey, SceneOptions>,
  run: RunOptions,
): Promise<FieldRun> {
  const { document, options, cellM, enough } = request;
  const stands = states.get('stands') as SceneOptions;
  const outline = field.geometry.coordinates[0].map(([lon, lat]) => [lon, lat] as const);
  // A ring has at least four places.
  const grid = gridCovering(localBoxOf(options.frame, outline)!, cellM);
  const mask = cellsInside(
    grid,
    field.geometry.coordinates.map((ring) => ringToLocal(options.frame, ring)),
  );
  const edges = nearEdges(document, field, options.frame, stands);
  const moments = [...states.values(), ...edges.map(({ id }) => standsWithout(stands, id))];
  const looks = await lookAt(runner, request, grid, moments, run);
  const figures = looks.map(({ light, shelter }) => stateFigures(light, shelter, mask, enough));
  const keys = [...states.keys()];
  const byState = <Value>(of: (k: number) => Value) =>
    new Map<FieldStateKey, Value>(keys.map((key, k) => [key, of(k)]));
  return {
    grid,
    mask,
    states: byState((k) => figures[k]),
    maps: byState(
      (k): StateMaps => ({
        lightShare: looks[k].light.lightShare,
        windShare: looks[k].shelter.windShare.slice(0, cellCount(grid)),
      }),
    ),
    withoutEdges: edges.map((edge, i) => ({ ...edge, figures: figures[keys.length + i] })),
    shelteredFrom: await shelteredFrom(runner, request, field, states, run.signal),
  };
}

interface Look {
  readonly light: YearLight;
  readonly shelter: ShelterResult;
}

/** Light and shelter on a grid in several states; what stands the same in two is looked at once. */
async function lookAt(
  runner: JobRunner,
  { document, reading, lightHeightM }: ChooseRequest,
  grid: GridSpec,
  moments: readonly SceneOptions[],
  { signal, onProgress }: RunOptions,
): Promise<Look[]> {
  const { scene, years } = lightYears(document, moments);
  const first = (k: number) => years.findIndex((things) => sameContent(things, years[k]));
  const different = years.flatMap((_, k) => (first(k) === k ? [k] : []));
  const lights = await runner.run(
    'light-years',
    { scene, years: different.map((k) => years[k]), grid, readingHeightM: lightHeightM, coarse: true },
    { signal, onProgress },
  );
  const shelters = await Promise.all(
    different.map((k) =>
      runner.run(
        'shelter',
        {
          ...reading,
          scene: withGroundNear(shelterScene(document, moments[k]).scene, [grid]),
          grid,
          directionsASector: LIVE_DIRECTIONS_A_SECTOR,
        },
        { signal },
      ),
    ),
  );
  return moments.map((_, k) => {
    const at = different.indexOf(first(k));
    return { light: lights[at], shelter: shelters[at] };
  });
}

/** When half of the field is in shelter with what is planned, found by halving: shelter is taken to grow on. */
async function shelteredFrom(
  runner: JobRunner,
  { document, reading }: ChooseRequest,
  field: FieldFeature,
  states: ReadonlyMap<FieldStateKey, SceneOptions>,
  signal: AbortSignal | undefined,
): Promise<ShelteredFrom> {
  const planned = states.get(0) as SceneOptions;
  const yearAt = async (pace: Pace): Promise<number | null> => {
    const isSheltered = async (year: number) => {
      const cut = await runFieldCut(runner, document, { ...planned, year, pace }, field, reading, { signal });
      return cut.protectedShare >= SHELTERED_SHARE;
    };
    if (await isSheltered(0)) return 0;
    if (!(await isSheltered(LAST_YEAR))) return null;
    let [before, from] = [0, LAST_YEAR];
    while (from - before > 1) {
      const middle = Math.floor((before + from) / 2);
      if (await isSheltered(middle)) from = middle;
      else before = middle;
    }
    return from;
  };
  const [slow, usual, fast] = await Promise.all(PACES.map(yearAt));
  return { slow, usual, fast };
}
