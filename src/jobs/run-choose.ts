import { beltNeededM } from '../choose/belt-needed.ts';
import type { Enough, FieldFound, FieldStateKey, StateFigures, StateMaps } from '../choose/choose-types.ts';
import { type ColdAir, coldAirScene } from '../choose/cold-air.ts';
import { edgesByOwner } from '../choose/edges-by-owner.ts';
import { fieldStates, standsWithout } from '../choose/field-states.ts';
import { groundFigures, wetnessOf } from '../choose/ground-figures.ts';
import { nearEdges } from '../choose/near-edges.ts';
import { stateFigures } from '../choose/state-figures.ts';
import { localBoxOf } from '../geo/local-box.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import { coarserGrid } from '../numeric/coarser-grid.ts';
import { cellCount, gridCovering } from '../numeric/grid.ts';
import { keepScenes } from '../scene/kept-scenes.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { type LooksRequest, looksAt, type Moment } from './choose-looks.ts';
import { type CoarseField, shelteredFrom } from './choose-sheltered-from.ts';
import { inLanes } from './lanes.ts';
import type { JobRunner, RunOptions } from './messages.ts';

export interface ChooseRequest extends Omit<LooksRequest, 'scenes'> {
  readonly document: SiteDocument;
  /** Its year is not looked at. */
  readonly options: SceneOptions;
  readonly fields: readonly FieldFeature[];
  readonly cellM: number;
  readonly enough: Enough;
}

/** The same on ground no finer than means over fields need, and the states of the site that are looked at. */
export type FieldsRequest = ChooseRequest & Pick<LooksRequest, 'scenes'>;

export interface ChooseFound {
  readonly fields: readonly FieldFound[];
  readonly cold: ColdAir;
}

/**
 * Finer ground than so many cells says nothing more of a field's means, and is dear to look over and to hand on: on
 * Sorrel Bank from 2.5 m to 12.5 m of ground hours of sun move by 0.02 %, shares of light and cuts of wind by 0.001, the
 * share in shelter by 0.01.
 */
const MOST_GROUND_CELLS = 100_000;
/** Cells along a field's longer side where a look is to cost little. */
const COARSE_ACROSS = 24;

/** All that is asked of each field before one is chosen; fields are worked out side by side. */
export async function runChoose(
  runner: JobRunner,
  request: ChooseRequest,
  run: RunOptions = {},
): Promise<ChooseFound> {
  const { document, options } = request;
  const onFields = onCoarseGround(request, [options]);
  const stands = fieldStates(document, options).get('stands') as SceneOptions;
  // Beside the first fields: none of them waits for it until it has been looked at.
  const cold = runner.run('cold-air', coldAirScene(document, stands), { signal: run.signal });
  const wetness = cold.then(wetnessOf);
  const found = eachField(runner, request, run, async (field, fieldRun): Promise<FieldFound> => {
    const { frame, ground, layout } = options;
    const one = await runField(runner, onFields, field, fieldRun);
    const lie = groundFigures(document, field, frame, ground, await cold, await wetness, layout);
    const standing = one.states.get('stands') as StateFigures;
    return {
      id: field.id,
      name: field.properties.name ?? String(field.id),
      ground: lie,
      ...one,
      beltNeededM: beltNeededM(lie.areaM2, standing.shelterEnoughShare),
    };
  });
  const [fields] = await Promise.all([found, wetness]);
  return { fields, cold: await cold };
}

/** Fields one after another, as many at a time as there are threads. */
export function eachField<Result>(
  runner: JobRunner,
  { fields }: Pick<ChooseRequest, 'fields'>,
  { signal, onProgress }: RunOptions,
  work: (field: FieldFeature, run: RunOptions) => Promise<Result>,
): Promise<Result[]> {
  const done = fields.map(() => 0);
  return inLanes(fields, runner.threads, (field, k) =>
    work(field, {
      signal,
      onProgress: (share) => {
        done[k] = share;
        onProgress?.(done.reduce((sum, each) => sum + each, 0) / fields.length);
      },
    }),
  );
}

/** @param all the options whose states are looked at, each besides the others; their ground is made coarser. */
export function onCoarseGround(request: ChooseRequest, all: readonly SceneOptions[]): FieldsRequest {
  const { document } = request;
  const ground = coarserGrid(request.options.ground, MOST_GROUND_CELLS);
  const states = all.flatMap((options) => [...fieldStates(document, { ...options, ground }).values()]);
  return { ...request, options: { ...request.options, ground }, scenes: keepScenes(document, states) };
}

/** A field on cells of a size. @param cellM absent: as coarse as a look that costs little. */
export function fieldCells(field: FieldFeature, { frame }: SceneOptions, cellM?: number): CoarseField {
  const outline = field.geometry.coordinates[0].map(([lon, lat]) => [lon, lat] as const);
  // A ring has at least four places.
  const box = localBoxOf(frame, outline)!;
  const longerM = Math.max(box.east - box.west, box.north - box.south);
  const grid = gridCovering(box, cellM ?? Math.max(1, longerM / COARSE_ACROSS));
  const rings = field.geometry.coordinates.map((ring) => ringToLocal(frame, ring));
  return { grid, mask: cellsInside(grid, rings) };
}

/** The states of a field with one thing after another gone that is somebody else's. */
export interface FieldMoments {
  readonly states: ReadonlyMap<FieldStateKey, SceneOptions>;
  /** The states in their order, then without each edge, then without each owner's. */
  readonly all: readonly SceneOptions[];
  /** Puts together what was found of each, in the order of `all`. */
  readonly join: (
    figures: readonly StateFigures[],
  ) => Pick<FieldFound, 'states' | 'withoutEdges' | 'withoutOwners'>;
}

/**
 * @param options their year is not looked at.
 * @param only the states that are looked at, and none of the edges by itself; absent: all.
 */
export function fieldMoments(
  { document, scenes }: Pick<FieldsRequest, 'document' | 'scenes'>,
  field: FieldFeature,
  options: SceneOptions,
  only?: readonly FieldStateKey[],
): FieldMoments {
  const every = fieldStates(document, options);
  const stands = every.get('stands') as SceneOptions;
  const states = new Map([...every].filter(([key]) => !only || only.includes(key)));
  const near = nearEdges(document, field, options.frame, scenes.grown(stands), stands.layout);
  const owners = edgesByOwner(document, near);
  const edges = only ? [] : near;
  const gone = (ids: readonly FeatureId[]) => standsWithout(stands, ids);
  return {
    states,
    all: [...states.values(), ...edges.map(({ id }) => gone([id])), ...owners.map(({ ids }) => gone(ids))],
    join: (figures) => ({
      states: new Map([...states.keys()].map((key, k) => [key, figures[k]])),
      withoutEdges: edges.map(({ id, label, owner }, i) => ({
        id,
        label,
        owner,
        figures: figures[states.size + i],
      })),
      withoutOwners: owners.map((owner, i) => ({
        ...owner,
        figures: figures[states.size + edges.length + i],
      })),
    }),
  };
}

type FieldRun = Pick<
  FieldFound,
  'grid' | 'mask' | 'states' | 'maps' | 'withoutEdges' | 'withoutOwners' | 'shelteredFrom'
>;

async function runField(
  runner: JobRunner,
  request: FieldsRequest,
  field: FieldFeature,
  run: RunOptions,
): Promise<FieldRun> {
  const { options, cellM, enough } = request;
  const { grid, mask } = fieldCells(field, options, cellM);
  const { states, all, join } = fieldMoments(request, field, options);
  const moments = all.map((moment): Moment => ({ options: moment }));
  const [looks, from] = await Promise.all([
    looksAt(runner, request, grid, moments, run),
    shelteredFrom(
      runner,
      request,
      fieldCells(field, options),
      states.get(0) as SceneOptions,
      enough.windCut,
      run.signal,
    ),
  ]);
  return {
    grid,
    mask,
    ...join(looks.map(({ light, shelter }) => stateFigures(light, shelter, mask, enough))),
    maps: new Map(
      [...states.keys()].map((key, k): [FieldStateKey, StateMaps] => [
        key,
        {
          lightShare: looks[k].light.lightShare,
          windShare: looks[k].shelter.windShare.slice(0, cellCount(grid)),
        },
      ]),
    ),
    shelteredFrom: from,
  };
}
