import type { SiteDocument } from '../site/document.ts';
import { choosingDefaults, type KnockOut, type Matter } from '../site/records/choosing.ts';
import { type BeltGrowth, beltGrowth } from './belt-needed.ts';
import type { ChooseEnd } from './choose-ends.ts';
import type { Enough, FieldFigures, FieldFound } from './choose-types.ts';
import { type Firmness, firmness } from './firmness.ts';
import { isOut, type Judged, judgeAll } from './knock-outs.ts';
import { fieldValues } from './rank-fields.ts';

/** How a person chooses, with what is taken where nothing is said. */
export interface Choosing {
  readonly knockOuts: readonly KnockOut[];
  readonly order: readonly Matter[];
  readonly enough: Enough;
}

export function choosingOf({ site }: SiteDocument): Choosing {
  const { knockOuts = [], order = choosingDefaults.order, enough } = site.choosing ?? {};
  return {
    knockOuts,
    order,
    enough: {
      light: enough?.light ?? choosingDefaults.enough.light,
      windCut: enough?.windCut ?? choosingDefaults.enough.windCut,
    },
  };
}

/** A field with what came of it. */
export interface ChosenField extends FieldFound {
  readonly judged: readonly Judged[];
  readonly out: boolean;
  /** Share of draws in which it comes first; null: it is out, or nothing was drawn. */
  readonly firstShare: number | null;
}

/** All that is said of a choice, in figures; the words are made of it. */
export interface Choice extends Choosing {
  readonly siteName: string;
  readonly baseYear: number;
  /** In the order of the file. */
  readonly fields: readonly ChosenField[];
  readonly growth: BeltGrowth | null;
  /** Over the fields that are in; null: not drawn. */
  readonly firmness: Firmness | null;
  /** Fields that are out and would come first without the conditions. */
  readonly wouldComeFirst: readonly string[];
}

type AtEnds = ReadonlyMap<FieldFound['id'], ReadonlyMap<ChooseEnd | null, FieldFigures>>;

/** @param atEnds what the ends of what is not known make of each field; null: not asked. */
export function choiceOf(
  document: SiteDocument,
  found: readonly FieldFound[],
  atEnds: AtEnds | null,
): Choice {
  const choosing = choosingOf(document);
  const judged = found.map((field) => judgeAll(field, choosing.knockOuts));
  const still = found.filter((_, k) => !isOut(judged[k]));
  const values = (fields: readonly FieldFound[]) =>
    fields.map((field) => fieldValues(field, atEnds?.get(field.id) ?? null, choosing.order));
  const drawn =
    still.length > 0 && choosing.order.length > 0 ? firmness(values(still), choosing.order) : null;
  const all = drawn && still.length < found.length ? firmness(values(found), choosing.order).first : [];
  return {
    ...choosing,
    siteName: document.site.name,
    baseYear: document.site.baseYear,
    fields: found.map((field, k) => ({
      ...field,
      judged: judged[k],
      out: isOut(judged[k]),
      firstShare: drawn && still.includes(field) ? drawn.firstShare[still.indexOf(field)] : null,
    })),
    growth: beltGrowth(document),
    firmness: drawn,
    wouldComeFirst: all.filter((k) => isOut(judged[k])).map((k) => found[k].name),
  };
}

export const stillIn = ({ fields }: Choice): readonly ChosenField[] => fields.filter(({ out }) => !out);
