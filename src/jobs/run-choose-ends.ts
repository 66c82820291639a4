import { CHOOSE_ENDS, type ChooseEnd, WIND_ENDS, windTurnDeg } from '../choose/choose-ends.ts';
import {
  FIELD_STATES,
  type FieldFigures,
  type FieldFound,
  type FieldStateKey,
  type ShelteredFrom,
} from '../choose/choose-types.ts';
import { stateOf } from '../choose/measures.ts';
import { stateFigures } from '../choose/state-figures.ts';
import { atEnd, type SceneEnd } from '../scene/ends.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { FeatureId } from '../site/document.ts';
import type { Matter } from '../site/records/choosing.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { looksAt, type Moment } from './choose-looks.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import {
  type ChooseRequest,
  eachField,
  type FieldsRequest,
  fieldCells,
  fieldMoments,
  onCoarseGround,
} from './run-choose.ts';

/** One field on coarse cells, as expected (null) and at each end of what is not known. */
export type FieldAtEnds = ReadonlyMap<ChooseEnd | null, FieldFigures>;

const isWindEnd = (end: ChooseEnd | null): end is (typeof WIND_ENDS)[number] =>
  WIND_ENDS.some((each) => each === end);

/** @param end null: as expected. */
const optionsAt = (options: SceneOptions, end: ChooseEnd | null): SceneOptions =>
  isWindEnd(end) ? options : atEnd(options, end as SceneEnd | null);

/**
 * What the ends of what is not known make of each field, on cells so coarse that it costs little; to be laid about the
 * figures of fine cells.
 * @param found the fields' own figures: how the ground lies hangs on none of it, and how fast things grow decides alone
 * from which year a field is in shelter.
 * @param matters what it is asked for: only their states are looked at.
 */
export async function runChooseEnds(
  runner: JobRunner,
  request: ChooseRequest,
  found: readonly FieldFound[],
  matters: readonly Matter[],
  run: RunOptions = {},
): Promise<ReadonlyMap<FeatureId, FieldAtEnds>> {
  const states = FIELD_STATES.filter(
    (state) => state === 'stands' || matters.some((matter) => stateOf(matter) === state),
  );
  const ends: readonly (ChooseEnd | null)[] = [null, ...CHOOSE_ENDS];
  const onFields = onCoarseGround(
    request,
    ends.map((end) => optionsAt(request.options, end)),
  );
  const fields = await eachField(runner, request, run, async (field, fieldRun) => {
    const own = found.find(({ id }) => id === field.id);
    if (!own) throw new RangeError(`expected figures of the field ${String(field.id)}, found none`);
    return [field.id, await fieldAtEnds(runner, onFields, field, own, ends, states, fieldRun)] as const;
  });
  return new Map(fields);
}

async function fieldAtEnds(
  runner: JobRunner,
  request: FieldsRequest,
  field: FieldFeature,
  own: FieldFigures,
  ends: readonly (ChooseEnd | null)[],
  states: readonly FieldStateKey[],
  run: RunOptions,
): Promise<FieldAtEnds> {
  const { options, enough } = request;
  const { grid, mask } = fieldCells(field, options);
  const perEnd = ends.map((end) => fieldMoments(request, field, optionsAt(options, end), states));
  const moments = perEnd.flatMap(({ all }, i) =>
    all.map((moment): Moment => ({ options: moment, windTurnDeg: windTurnDeg(ends[i]) })),
  );
  const looks = await looksAt(runner, request, grid, moments, run);
  const figures = looks.map(({ light, shelter }) => stateFigures(light, shelter, mask, enough));
  let start = 0;
  return new Map(
    ends.map((end, i): [ChooseEnd | null, FieldFigures] => {
      const { all, join } = perEnd[i];
      const mine = figures.slice(start, start + all.length);
      start += all.length;
      return [
        end,
        {
          ground: own.ground,
          ...join(mine),
          shelteredFrom: shelteredAt(own.shelteredFrom, end),
          beltNeededM: own.beltNeededM,
        },
      ];
    }),
  );
}

/** How fast things grow decides alone from which year on there is shelter. */
function shelteredAt(from: ShelteredFrom, end: ChooseEnd | null): ShelteredFrom {
  if (end === 'slow-growth') return { ...from, usual: from.slow };
  if (end === 'fast-growth') return { ...from, usual: from.fast };
  return from;
}
