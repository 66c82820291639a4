import type { KnockOut } from '../site/records/choosing.ts';
import type { FieldFigures } from './choose-types.ts';
import { matterValue } from './measures.ts';

/** What came of one condition on one field. */
export interface Judged {
  readonly condition: KnockOut;
  /** The figure that decided; null: not known; Infinity: never. */
  readonly value: number | null;
  /** Null: cannot be told. What is not known knocks nothing out. */
  readonly met: boolean | null;
}

export function judge(field: FieldFigures, condition: KnockOut): Judged {
  const value = matterValue(field, condition);
  if (value === null) return { condition, value, met: null };
  const { atLeast, atMost } = condition;
  return { condition, value, met: atLeast !== undefined ? value >= atLeast : value <= (atMost as number) };
}

export const judgeAll = (field: FieldFigures, conditions: readonly KnockOut[]): Judged[] =>
  conditions.map((condition) => judge(field, condition));

/** A field is out where it fails one condition or more. */
export const isOut = (judged: readonly Judged[]): boolean => judged.some(({ met }) => met === false);

/** Conditions that a person is likely to set, to begin with. */
export const USUAL_KNOCK_OUTS: readonly KnockOut[] = [
  { measure: 'hollowShare', atMost: 0.1 },
  { measure: 'toAccessM', atMost: 50 },
  { measure: 'shelteredM2', year: 10, atLeast: 10_000 },
  { measure: 'areaM2', atLeast: 5000 },
  { measure: 'slopeDeg', atMost: 12 },
];
