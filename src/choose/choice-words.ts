/** A choice between fields in words: the same on the screen, on paper and on the command line. */
import type { KnockOut } from '../site/records/choosing.ts';
import { listInWords } from '../units/list-in-words.ts';
import { barsOf, type CellPicture, measurePictures } from './cell-pictures.ts';
import type { Choice, ChosenField } from './choice.ts';
import { stillIn } from './choice.ts';
import { FIELD_STATES, type FieldStateKey, type StateFigures, type WithoutOwner } from './choose-types.ts';
import { inColdOrder } from './cold-words.ts';
import { FIRMNESS_RESTS_ON, firmnessSentences } from './firmness-words.ts';
import { judgedWords, knockOutWords } from './knock-out-words.ts';
import { MEASURES } from './measure-list.ts';
import type { Measure, MeasureKey } from './measure-types.ts';
import { type ChooseUnits, cellWords, matterWords, percentWords } from './measure-words.ts';
import { beltsRestOn, comparingSentences, fieldSentences, ownersWords, tradeOf } from './sentences.ts';

/** A row of the table. */
export interface ChoiceRow {
  readonly group: string;
  readonly what: string;
  /** It stands on a page where there is room for a part alone. */
  readonly brief: boolean;
  /** A cell a field, in the order of the fields that were given; */
  readonly cells: readonly string[];
  /** and the small picture beside it. */
  readonly pictures: readonly (CellPicture | null)[];
}

/** Left to the table where a page is short. */
const MINOR: ReadonlySet<MeasureKey> = new Set([
  'horizonSumDeg',
  'bothShare',
  'dammedShare',
  'deepestColdM',
  'drainsThroughM2',
]);

/** Every measure, fields side by side; what no field has is left out. */
export function choiceRows(
  fields: readonly ChosenField[],
  units: ChooseUnits,
  states: readonly FieldStateKey[] = FIELD_STATES,
): ChoiceRow[] {
  const rows = MEASURES.filter((measure) => measure.unit === 'bearing' || isKnown(measure, fields)).map(
    (measure): ChoiceRow => ({
      group: measure.group,
      what: measure.what,
      brief: !MINOR.has(measure.key),
      cells: fields.map((field) => cellWords(measure, field, units, states)),
      pictures: measurePictures(measure, fields, states),
    }),
  );
  const pastCold = rows.findLastIndex(({ group }) => group === COLD) + 1;
  return [
    ...rows.slice(0, pastCold),
    ...coldRow(fields),
    ...rows.slice(pastCold),
    ...ownerRows(fields, units),
  ];
}

const COLD: Measure['group'] = 'Cold air';

/** Each field's place by how much cold air it holds; none where no field holds any. */
function coldRow(fields: readonly ChosenField[]): ChoiceRow[] {
  const order = coldOrder(fields);
  if (!order.some(({ holdsSome }) => holdsSome)) return [];
  const cells = fields.map(({ id }) => {
    const place = order.find((each) => each.id === id);
    return place?.holdsSome ? `${place.rank} of ${fields.length}` : 'holds none';
  });
  const depths = fields.map(({ ground }) => [ground.cold.heldDepthM]);
  const what = 'Place, the one that holds most first';
  return [{ group: COLD, what, brief: true, cells, pictures: barsOf(depths, false) }];
}

/** The fields compared, the one that holds most cold air first. */
export const coldOrder = (fields: readonly ChosenField[]) =>
  inColdOrder(fields.map(({ id, name, ground }) => ({ id, name, cold: ground.cold })));

const isKnown = (measure: Measure, fields: readonly ChosenField[]): boolean =>
  fields.some((field) => measure.of(field, 'stands') !== null);

/** What each owner's edges do to each field, and what it would be without them. */
function ownerRows(fields: readonly ChosenField[], units: ChooseUnits): ChoiceRow[] {
  const owners = [
    ...new Set(fields.flatMap(({ withoutOwners }) => withoutOwners.map(({ owner }) => owner))),
  ].sort((a, b) => a.localeCompare(b));
  return owners.flatMap((owner) => {
    const row = (
      what: string,
      brief: boolean,
      cell: (field: ChosenField, gone: WithoutOwner) => string,
      figure: keyof StateFigures,
    ): ChoiceRow => {
      const gone = fields.map(({ withoutOwners }) => withoutOwners.find((each) => each.owner === owner));
      return {
        group: 'Edges of others',
        what: `Without ${ownersWords(owner)}: ${what}`,
        brief,
        cells: fields.map((field, k) => {
          const one = gone[k];
          return one ? cell(field, one) : '–';
        }),
        pictures: barsOf(
          gone.map((one) => [one?.figures[figure] ?? null]),
          true,
        ),
      };
    };
    return [
      row('wind cut by', false, (_, { figures }) => percentWords(figures.windCutGrowing), 'windCutGrowing'),
      row(
        'share of open light',
        false,
        (_, { figures }) => percentWords(figures.lightGrowing),
        'lightGrowing',
      ),
      row('ground with both', true, (field, gone) => units.area(tradeOf(field, gone).keptM2), 'bothShare'),
    ];
  });
}

/** What is asked before anything is compared, one sentence; and what came of each field. */
export function knockOutSentences(choice: Choice, units: ChooseUnits): string[] {
  const { knockOuts, fields } = choice;
  if (knockOuts.length === 0) return ['Nothing is asked that would knock a field out.'];
  const words = (conditions: readonly KnockOut[]) =>
    conditions.map((condition) => knockOutWords(condition, units));
  // What nothing is known of on any field is said once.
  const blind = knockOuts.filter((_, k) => fields.every(({ judged }) => judged[k].met === null));
  const asked = words(knockOuts);
  const said = [`A field must have: ${listInWords(asked, asked.length)}.`];
  if (blind.length > 0)
    said.push(
      `Not judged: ${listInWords(words(blind), blind.length)}; nothing of the kind is drawn anywhere.`,
    );
  const told = fields.map(({ name, judged }) => ({
    name,
    judged: judged.filter(({ condition }) => !blind.includes(condition)),
  }));
  const plain = told.filter(({ judged }) => judged.every(({ met }) => met === true));
  if (plain.length > 0)
    said.push(
      `${listInWords(
        plain.map(({ name }) => name),
        plain.length,
      )} ${plain.length === 1 ? 'stays' : 'stay'} in.`,
    );
  return [
    ...said,
    ...told.flatMap((field) => (plain.includes(field) ? [] : [judgedWords(field.name, field.judged, units)])),
  ];
}

/** The two or three sentences that matter between the fields that are in; of the one field where only one is. */
export function choiceSentences(choice: Choice, units: ChooseUnits): string[] {
  const fields = stillIn(choice);
  if (fields.length === 0) return ['Every field is knocked out: no field has all that is asked.'];
  if (fields.length === 1) return fieldSentences(fields[0], choice.growth, units);
  return comparingSentences(fields, choice.growth, units);
}

/** How firm the choice is, and what would have to change to change it. */
export function firmSentences(choice: Choice): string[] {
  const fields = stillIn(choice);
  const { firmness, order, wouldComeFirst } = choice;
  if (order.length === 0) return ['Nothing is said to matter, so that no field comes first.'];
  if (!firmness) return [];
  const said = firmnessSentences(
    firmness,
    fields.map(({ name }) => name),
    order,
  );
  if (wouldComeFirst.length > 0)
    said.push(`Without what is asked first ${listInWords(wouldComeFirst)} would come first.`);
  return said;
}

/** "1 ground with both, as it stands; 2 lies in a frost hollow" */
export const orderWords = ({ order }: Choice): string =>
  order.map((matter, k) => `${k + 1} ${matterWords(matter)}`).join('; ');

const isWindier = ({ states }: ChosenField): boolean =>
  [...states.values()].some(
    ({ windCutGrowing, windCutRest }) => Math.min(windCutGrowing, windCutRest) < -0.005,
  );

/** What the figures rest on. */
export const choiceRests = ({ enough, growth, firmness, fields }: Choice, units: ChooseUnits): string[] => [
  `Enough light: ${percentWords(enough.light)} of open light or more in the growing season. Enough shelter: wind cut by ${percentWords(enough.windCut)} or more then. Planned trees are left out; belts, woods and nets that are planned are in.`,
  ...(fields.some(isWindier)
    ? [
        'A wind cut below 0 %: land that stands up, or the end of a belt, makes the wind there stronger than on level open ground.',
      ]
    : []),
  beltsRestOn(growth, units),
  ...(firmness ? [FIRMNESS_RESTS_ON] : []),
  'An estimate, and no guarantee: a figure of shelter or shade never means that a tree is sound, and an edge that is somebody else’s is theirs to fell.',
];
