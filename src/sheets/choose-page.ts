import { type CellPicture, cellShapes } from '../choose/cell-pictures.ts';
import type { Choice, ChosenField } from '../choose/choice.ts';
import {
  choiceRests,
  choiceRows,
  choiceSentences,
  firmSentences,
  knockOutSentences,
  orderWords,
} from '../choose/choice-words.ts';
import { FIELD_STATES, type FieldStateKey } from '../choose/choose-types.ts';
import { type ChooseUnits, statesWords } from '../choose/measure-words.ts';
import { textLines } from './draw-legend.ts';
import { fieldPicture, pictureKey, pictureSizeM } from './field-picture.ts';
import { INK, LEAF, SOFT_INK } from './inks.ts';
import { scaleThatFits } from './map-scale.ts';
import { pageHead } from './page-head.ts';
import type { Mark, PageModel, PointMm } from './page-model.ts';
import { MARGIN_MM, type PaperSize, pageSizeMm } from './paper.ts';
import { RULED_TEXT_MM, ruledRowMm, ruledTable, ruledTableHeightMm } from './ruled-table.ts';
import { cutToWidth, textWidthMm, wrapToWidth } from './text-width.ts';

export interface ChoosePageInput {
  readonly paper: PaperSize;
  readonly choice: Choice;
  readonly layout: string | null;
  readonly units: ChooseUnits;
  /** As it is to be printed. */
  readonly madeOn: string;
}

const HEADER_MM = 17;
const GAP_MM = 3;
const HEAD_MM = 3.4;
/** What matters is set larger than what it rests on. */
const SAID = { sizeMm: 3.1, stepMm: 4.2 };
const USUAL = { sizeMm: 2.7, stepMm: 3.6 };
const FINE = { sizeMm: 2.4, stepMm: 3.1 };
type Setting = typeof SAID;
const LABEL_MM = 56;
const PICTURE_MM = 32;
/** So many fields stand beside each other. */
const MOST_SHOWN = 5;
/** With more fields there is no room in a cell for every state. */
const MOST_WITH_ALL_STATES = 3;

/** Ways to set the page, the fullest first: states that are pictured, and how the rest is set. */
const WAYS: readonly { readonly pictured: readonly FieldStateKey[]; readonly text: Setting }[] = [
  { pictured: ['stands', 20], text: USUAL },
  { pictured: ['stands'], text: USUAL },
  { pictured: ['stands'], text: FINE },
];

/** One page on which fields are compared: what matters, pictures, the table, what knocks out, how firm it is. */
export function choosePage(input: ChoosePageInput): PageModel {
  const { choice } = input;
  const { widthMm, heightMm } = pageSizeMm(input.paper, 'portrait');
  const innerMm = widthMm - 2 * MARGIN_MM;
  const title = `Which field? ${choice.siteName}`;
  const under = `${choice.fields.length} field${choice.fields.length === 1 ? '' : 's'}${input.layout ? `, layout ${input.layout}` : ''}; year 0 is ${choice.baseYear}`;
  const set = WAYS.map((way) => setPage(input, innerMm, way));
  const chosen = set.find(({ endMm }) => endMm <= heightMm - MARGIN_MM) ?? set[set.length - 1];
  return {
    title,
    widthMm,
    heightMm,
    marks: [
      ...pageHead({ title, under, made: `made ${input.madeOn}`, page: 1, text: 'broad' }, innerMm),
      ...chosen.marks,
    ],
  };
}

function setPage(
  input: ChoosePageInput,
  innerMm: number,
  { pictured, text }: (typeof WAYS)[number],
): { marks: Mark[]; endMm: number } {
  const { choice, units } = input;
  const shown = shownFields(choice);
  const marks: Mark[] = [];
  let yMm = MARGIN_MM + HEADER_MM;
  const say = (head: string | null, sentences: readonly string[], { sizeMm, stepMm }: Setting) => {
    const lines = sentences.flatMap((sentence) =>
      wrapToWidth(sentence.replaceAll(/(\d) (%|ha|m²|m|h)(?=\W|$)/g, '$1\u00a0$2'), sizeMm, innerMm),
    );
    if (lines.length === 0) return;
    if (head) {
      marks.push(...textLines([head], MARGIN_MM, yMm, HEAD_MM, 4, true));
      yMm += 5;
    }
    marks.push(...textLines(lines, MARGIN_MM, yMm, sizeMm, stepMm));
    yMm += lines.length * stepMm + GAP_MM;
  };
  say(null, choiceSentences(choice, units), SAID);
  for (const state of pictured) yMm = pictures(marks, shown, state, choice, innerMm, yMm);
  marks.push(...pictureKey([MARGIN_MM + LABEL_MM + GAP_MM, yMm]));
  yMm += 3 + GAP_MM;
  yMm = table(marks, shown, input, innerMm, yMm);
  say('Asked first', knockOutSentences({ ...choice, fields: shown }, units), text);
  const order = `What matters, in order: ${orderWords(choice)}.`;
  say('How firm is it?', [...firmSentences(choice), order], text);
  say(null, choiceRests(choice, units), FINE);
  return { marks, endMm: yMm - GAP_MM };
}

/** The fields that there is room for: those that are in first, those that come first most often before others. */
function shownFields({ fields }: Choice): readonly ChosenField[] {
  if (fields.length <= MOST_SHOWN) return fields;
  const kept = fields
    .toSorted(
      (a, b) =>
        Number(a.out) - Number(b.out) ||
        (b.firstShare ?? 0) - (a.firstShare ?? 0) ||
        a.name.localeCompare(b.name),
    )
    .slice(0, MOST_SHOWN);
  return fields.filter((field) => kept.includes(field));
}

const columnMm = (fields: readonly ChosenField[], innerMm: number): number =>
  (innerMm - LABEL_MM) / fields.length;

/** Pictures above their columns, all to one scale. Mutates `marks`. @returns where to go on */
function pictures(
  marks: Mark[],
  fields: readonly ChosenField[],
  state: FieldStateKey,
  { enough }: Choice,
  innerMm: number,
  yMm: number,
): number {
  const widthMm = columnMm(fields, innerMm) - GAP_MM;
  const sizes = fields.map(pictureSizeM);
  const widthM = Math.max(...sizes.map(([width]) => width));
  const heightM = Math.max(...sizes.map(([, height]) => height));
  const scale = scaleThatFits({ widthM, heightM }, { widthMm, heightMm: PICTURE_MM });
  const mmPerM = 1000 / scale;
  const tallestMm = heightM * mmPerM;
  fields.forEach((field, k) => {
    const leftMm = MARGIN_MM + LABEL_MM + k * columnMm(fields, innerMm) + GAP_MM;
    const [width, height] = sizes[k];
    const at: PointMm = [leftMm + (widthMm - width * mmPerM) / 2, yMm + (tallestMm - height * mmPerM) / 2];
    marks.push(...fieldPicture(field, state, enough, at, mmPerM));
  });
  const says =
    state === 'stands'
      ? `Ground of each field with enough light, enough shelter, or both. 1 : ${scale.toLocaleString('en-GB')}, north up.`
      : 'The same with planned belts, woods and nets.';
  marks.push(
    ...textLines(
      [state === 'stands' ? 'As it stands' : `In year ${state}`],
      MARGIN_MM,
      yMm,
      HEAD_MM,
      4,
      true,
    ),
    ...textLines(wrapToWidth(says, 2.6, LABEL_MM - 4), MARGIN_MM, yMm + 5, 2.6, 3.4),
  );
  return yMm + tallestMm + 2;
}

/** A small picture beside a cell's figures takes so much, where there is room. */
const MOST_BAR_MM = 9;
const LEAST_BAR_MM = 4;

function cellMarks(
  picture: CellPicture,
  [leftMm, topMm]: PointMm,
  widthMm: number,
  heightMm: number,
): Mark[] {
  const placed = (shape: readonly PointMm[]) => shape.map(([x, y]): PointMm => [leftMm + x, topMm + y]);
  const { filled, from } = cellShapes(picture, widthMm, heightMm);
  return [
    ...filled.map((shape): Mark => ({ mark: 'polygon', ringsMm: [placed(shape)], fill: LEAF })),
    ...(from
      ? [{ mark: 'line', pointsMm: placed(from), stroke: { ink: SOFT_INK, widthMm: 0.15 } } satisfies Mark]
      : []),
  ];
}

/** The table under the pictures. Mutates `marks`. @returns where to go on */
function table(
  marks: Mark[],
  fields: readonly ChosenField[],
  { choice, units }: ChoosePageInput,
  innerMm: number,
  yMm: number,
): number {
  const states: readonly FieldStateKey[] =
    fields.length <= MOST_WITH_ALL_STATES ? FIELD_STATES : ['stands', 20];
  const widthMm = columnMm(fields, innerMm);
  const rows = choiceRows(fields, units, states).filter(({ brief }) => brief);
  marks.push(
    ...fields.map(
      (field, k): Mark => ({
        mark: 'text',
        atMm: [MARGIN_MM + LABEL_MM + (k + 1) * widthMm, yMm + 3],
        text: cutToWidth(`${field.name}${field.out ? ' (out)' : ''}`, HEAD_MM, widthMm - 1, true),
        sizeMm: HEAD_MM,
        bold: true,
        ink: field.out ? SOFT_INK : INK,
        anchor: 'end',
      }),
    ),
    ...ruledTable(
      [{ head: '', widthMm: LABEL_MM }, ...fields.map(() => ({ head: '', widthMm, figures: true }))],
      rows.map(({ what, cells }) => ({ cells: [what, ...cells] })),
      MARGIN_MM,
      yMm,
    ),
  );
  rows.forEach((row, r) => {
    const [topMm, heightMm] = ruledRowMm(r);
    fields.forEach((_, k) => {
      const picture = row.pictures[k];
      const leftMm = MARGIN_MM + LABEL_MM + k * widthMm + GAP_MM;
      const freeMm = widthMm - GAP_MM - textWidthMm(row.cells[k], RULED_TEXT_MM) - 1;
      if (!picture || freeMm < LEAST_BAR_MM) return;
      const at = [leftMm, yMm + topMm + 0.7] as const;
      marks.push(...cellMarks(picture, at, Math.min(MOST_BAR_MM, freeMm), heightMm - 1.4));
    });
  });
  const left = choice.fields.length - fields.length;
  const notes = [
    `Where several figures stand: ${statesWords(states)}.`,
    ...(left > 0 ? [`${left} more field${left === 1 ? ' is' : 's are'} in the table file.`] : []),
    'Bars of shares are of the whole, others of the most in the row; arrows: the way down, north up.',
  ];
  const endMm = yMm + ruledTableHeightMm(rows.length) + 1;
  const lines = wrapToWidth(notes.join(' '), FINE.sizeMm, innerMm);
  marks.push(...textLines(lines, MARGIN_MM, endMm, FINE.sizeMm, FINE.stepMm));
  return endMm + lines.length * FINE.stepMm + GAP_MM;
}
