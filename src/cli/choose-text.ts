import papaparse from 'papaparse';
import type { Choice, ChosenField } from '../choose/choice.ts';
import {
  choiceRests,
  choiceRows,
  choiceSentences,
  coldOrder,
  firmSentences,
  knockOutSentences,
  orderWords,
} from '../choose/choice-words.ts';
import { FIELD_STATES, type FieldStateKey, type StateFigures } from '../choose/choose-types.ts';
import { knockOutWords } from '../choose/knock-out-words.ts';
import { MEASURES } from '../choose/measure-list.ts';
import { METRIC, matterWords, statesWords } from '../choose/measure-words.ts';
import { fieldSentences } from '../choose/sentences.ts';
import { PACES } from '../growth/pace-band.ts';

/** How it was asked. */
export interface ChooseRun {
  readonly layout: string | null;
  readonly cellM: number;
  readonly elapsedMs: number;
  readonly files: readonly string[];
  readonly out: string;
}

/** More characters than this do not stand beside each other on most screens. */
const WIDEST = 160;

/** Every measure of every field, with a line between; fields that do not fit beside the others come below them. */
function tables(fields: readonly ChosenField[]): string[] {
  const names = fields.map(({ name, out }) => `${name}${out ? ' (out)' : ''}`);
  const rows = choiceRows(fields, METRIC);
  const cells = [['', ...names], ...rows.map((row) => [row.what, ...row.cells])];
  const widths = cells[0].map((_, column) => Math.max(...cells.map((row) => row[column].length)));
  const lines: string[] = [];
  let first = 1;
  while (first <= fields.length) {
    let past = first + 1;
    let width = 2 + widths[0] + 2 + widths[first];
    while (past <= fields.length && width + 2 + widths[past] <= WIDEST) width += 2 + widths[past++];
    const columns = [0, ...fields.map((_, k) => k + 1).slice(first - 1, past - 1)];
    const line = (row: readonly string[]) =>
      `  ${columns.map((column) => row[column].padEnd(widths[column])).join('  ')}`.trimEnd();
    lines.push(line(cells[0]));
    rows.forEach(({ group }, k) => {
      if (k === 0 || rows[k - 1].group !== group) lines.push(group);
      lines.push(line(cells[k + 1]));
    });
    lines.push('');
    first = past;
  }
  return lines;
}

/** The answer for a person to read: the sentences, then the table. */
export function chooseText(choice: Choice, { layout, cellM, files, out }: ChooseRun): string {
  const { fields } = choice;
  const lines = [
    `${choice.siteName}${layout ? `, layout ${layout}` : ''}: ${fields.length} field${fields.length === 1 ? '' : 's'} at ${cellM} m (year 0 is ${choice.baseYear})`,
    ...choiceSentences(choice, METRIC),
    '',
    ...knockOutSentences(choice, METRIC),
    '',
    ...firmSentences(choice),
    `What matters, in order: ${orderWords(choice)}.`,
    '',
    `Where several figures stand: ${statesWords(FIELD_STATES)}`,
    ...tables(fields),
    ...choiceRests(choice, METRIC),
    `Written to ${out}: ${files.join(', ')}`,
  ];
  return `${lines.join('\n')}\n`;
}

const rounded = (value: number | null): number | null =>
  value === null || !Number.isFinite(value) ? null : Number(value.toFixed(4));
const STATE_NAMES: Readonly<Record<FieldStateKey, string>> = {
  stands: 'asItStands',
  0: 'year0',
  10: 'year10',
  20: 'year20',
};
const stateData = (figures: StateFigures) =>
  Object.fromEntries(Object.entries(figures).map(([key, value]) => [key, rounded(value)]));

function fieldData(field: ChosenField, choice: Choice) {
  return {
    id: field.id,
    name: field.name,
    out: field.out,
    firstShare: rounded(field.firstShare),
    says: fieldSentences(field, choice.growth, METRIC),
    knockOuts: field.judged.map(({ condition, value, met }) => ({
      ...condition,
      value: rounded(value),
      met,
    })),
    measures: Object.fromEntries(
      MEASURES.map((measure) => [
        measure.key,
        measure.byState
          ? Object.fromEntries(
              FIELD_STATES.map((state) => [STATE_NAMES[state], rounded(measure.of(field, state))]),
            )
          : rounded(measure.of(field, 'stands')),
      ]),
    ),
    coldRank: coldOrder(choice.fields).find(({ id }) => id === field.id)?.rank ?? null,
    shelteredFromYear: field.shelteredFrom,
    withoutEdges: field.withoutEdges.map(({ id, label, owner, figures }) => ({
      id,
      label,
      owner,
      ...stateData(figures),
    })),
    withoutOwners: field.withoutOwners.map(({ owner, ids, figures }) => ({
      owner,
      ids,
      ...stateData(figures),
    })),
  };
}

/** The same as data: shares 0 to 1, m, m2, hours, years after the base year; null: not known, or never. */
export function chooseJson(choice: Choice, { layout, cellM, elapsedMs }: ChooseRun): string {
  const names = (places: readonly number[]) =>
    places.map((k) => choice.fields.filter(({ out }) => !out)[k].name);
  const { firmness } = choice;
  const answer = {
    site: choice.siteName,
    baseYear: choice.baseYear,
    layout,
    cellM,
    elapsedMs,
    enough: choice.enough,
    knockOuts: choice.knockOuts.map((condition) => ({
      ...condition,
      says: knockOutWords(condition, METRIC),
    })),
    order: choice.order.map((matter) => ({ ...matter, says: matterWords(matter) })),
    measures: MEASURES.map(({ key, group, what, unit, better }) => ({ key, group, what, unit, better })),
    fields: choice.fields.map((field) => fieldData(field, choice)),
    firmness: firmness && {
      draws: firmness.draws,
      first: names(firmness.first),
      endsThatChange: firmness.endsThatChange.map(({ end, first }) => ({ end, first: names(first) })),
      movesThatChange: firmness.movesThatChange.map(({ from, to, first }) => ({
        measure: choice.order[from].measure,
        from: from + 1,
        to: to + 1,
        first: names(first),
      })),
    },
    wouldComeFirst: choice.wouldComeFirst,
    says: {
      whatMatters: choiceSentences(choice, METRIC),
      knockOuts: knockOutSentences(choice, METRIC),
      firm: firmSentences(choice),
      restsOn: choiceRests(choice, METRIC),
    },
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

/** The table as CSV: a line for each measure and state, a column for each field; empty: not known, or never. */
export function chooseCsv({ fields }: Choice): string {
  const cell = (value: number | null) => rounded(value) ?? '';
  const measured = MEASURES.flatMap((measure) =>
    (measure.byState ? FIELD_STATES : (['stands'] as const)).map((state) => [
      measure.group,
      measure.key,
      measure.what,
      measure.unit,
      measure.byState ? STATE_NAMES[state] : '',
      '',
      ...fields.map((field) => cell(measure.of(field, state))),
    ]),
  );
  const paced = PACES.map((pace) => [
    'Belts',
    'shelteredFromYear',
    'Half of it in shelter, with what is planned',
    'year',
    `${pace} growth`,
    '',
    ...fields.map(({ shelteredFrom }) => cell(shelteredFrom[pace])),
  ]);
  const order = coldOrder(fields);
  const cold = [
    'Cold air',
    'coldRank',
    'Place, the one that holds most first; those that hold none are last together',
    'place',
    '',
    '',
    ...fields.map(({ id }) => order.find((each) => each.id === id)?.rank ?? ''),
  ];
  const edges = [
    ...new Map(
      fields.flatMap(({ withoutEdges }) => withoutEdges.map((edge) => [String(edge.id), edge] as const)),
    ).values(),
  ];
  const without = edges.flatMap(({ id, label, owner }) =>
    EDGE_FIGURES.map(([key, what]) => [
      'Edges of others',
      key,
      what,
      'share',
      'asItStands',
      `${label} (${owner})`,
      ...fields.map(({ withoutEdges }) =>
        cell(withoutEdges.find((edge) => edge.id === id)?.figures[key] ?? null),
      ),
    ]),
  );
  const head = ['group', 'measure', 'what', 'unit', 'state', 'without', ...fields.map(({ name }) => name)];
  return `${papaparse.unparse([head, ...measured, cold, ...paced, ...without], { newline: '\n' })}\n`;
}

const EDGE_FIGURES = [
  ['windCutGrowing', 'Wind cut by, growing season'],
  ['windCutRest', 'Wind cut by, rest of the year'],
  ['lightGrowing', 'Share of open light, growing season'],
  ['lightMidwinter', 'Share of open light, midwinter month'],
  ['bothShare', 'Ground with both, of the field'],
] as const satisfies readonly (readonly [keyof StateFigures, string])[];
