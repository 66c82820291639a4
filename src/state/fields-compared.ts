import type { StoreApi } from 'zustand/vanilla';
import { type Choice, choiceOf, choosingOf } from '../choose/choice.ts';
import type { FieldFound } from '../choose/choose-types.ts';
import { type ChooseUnits, lengthWords, METRIC } from '../choose/measure-words.ts';
import { stateOf } from '../choose/measures.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { runChoose } from '../jobs/run-choose.ts';
import { runChooseEnds } from '../jobs/run-choose-ends.ts';
import type { Grid } from '../numeric/grid.ts';
import { setSite } from '../site/actions/set-site.ts';
import type { SiteRecord } from '../site/records/site.ts';
import { asItStands, type Key } from './answer-keys.ts';
import { fieldsOf } from './area-figures.ts';
import type { FieldsCompared } from './fields-compared-found.ts';
import { formatArea, lengthIn, lengthUnit } from './format-measure.ts';
import type { KeptAnswers } from './keep-answers.ts';
import { keepWhileOpen } from './keep-while-open.ts';
import type { Pass } from './lane.ts';
import type { App, AppState, UnitSystem } from './model.ts';
import { READING_HEIGHT_M, WIND_READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import { GALE_MPS } from './work.ts';

/** Coarse first, so that something is there to read. */
const CELLS_M = [6, 2];
/** A hand that moves rests this long before anything starts. */
const REST_MS = 300;

/** In which states the fields are looked at does not hang on the order of what matters. */
const statesAsked = (state: AppState): string =>
  [...new Set(choosingOf(state.document).order.map(stateOf))].sort().join();

const keyOf = (state: AppState): Key => {
  const { light, windCut } = choosingOf(state.document).enough;
  return [...asItStands(state), light, windCut, statesAsked(state)];
};

/** Keeps the fields compared while somebody chooses. */
export const keepFieldsCompared = (store: StoreApi<App>, runner: JobRunner): KeptAnswers =>
  keepWhileOpen<FieldsCompared>(
    store,
    { read: ({ fieldsCompared }) => fieldsCompared, write: (fieldsCompared) => ({ fieldsCompared }), keyOf },
    (state) => {
      const { dialog, ground } = state;
      const open = dialog === 'choose-field' || dialog === 'print-choice';
      return open && ground && fieldsOf(state.document).length > 0 ? passesOf(state, ground, runner) : null;
    },
    REST_MS,
  );

function passesOf(state: AppState, ground: Grid, runner: JobRunner): Pass<FieldsCompared>[] {
  const { document } = state;
  const { enough, order } = choosingOf(document);
  const request = (cellM: number) => ({
    document,
    options: { ...sceneOptions({ ...state, shownEnd: null }, ground), felled: null },
    fields: fieldsOf(document),
    cellM,
    reading: { readingHeightM: WIND_READING_HEIGHT_M, galeMps: GALE_MPS, options: state.shelterOptions },
    lightHeightM: READING_HEIGHT_M.ground,
    enough,
  });
  let fields: readonly FieldFound[] = [];
  return [
    ...CELLS_M.map(
      (cellM): Pass<FieldsCompared> =>
        async (signal, onProgress) => {
          ({ fields } = await runChoose(runner, request(cellM), { signal, onProgress }));
          return { fields, atEnds: null };
        },
    ),
    async (signal, onProgress) => ({
      fields,
      atEnds: await runChooseEnds(runner, request(CELLS_M[CELLS_M.length - 1]), fields, order, {
        signal,
        onProgress,
      }),
    }),
  ];
}

let last: { readonly of: readonly unknown[]; readonly choice: Choice | null } | null = null;

/** The choice between the fields as the person makes it; null while nothing is found. The same until something changes. */
export function fieldChoice({ document, fieldsCompared }: AppState): Choice | null {
  const found = fieldsCompared.result;
  const of = [document, found];
  if (!last?.of.every((each, k) => each === of[k])) {
    // What was found of fields that are gone since, or renamed, is of an earlier site.
    const here = new Set(fieldsOf(document).map(({ id }) => id));
    const fields = found?.fields.filter(({ id }) => here.has(id)) ?? [];
    last = { of, choice: found && fields.length > 0 ? choiceOf(document, fields, found.atEnds) : null };
  }
  return last.choice;
}

/** Sets how the person chooses: one step to undo. */
export const setChoosing = (app: App, label: string, part: NonNullable<SiteRecord['choosing']>): void =>
  app.edit(label, (document) => setSite(document, { choosing: { ...document.site.choosing, ...part } }));

/** The person's lengths and areas, for the words of a choice. */
export const choiceUnits = (units: UnitSystem): ChooseUnits =>
  units === 'metric'
    ? METRIC
    : {
        length: (lengthM) => lengthWords(lengthIn(lengthM, units), lengthUnit(units)),
        area: (areaM2) => formatArea(areaM2, units),
      };
