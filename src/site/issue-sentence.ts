import type { z } from 'zod';
import type { PropertyField } from './records/property-field.ts';

/** Turns what a validator found wrong into words: "heightM is -3; expected a number above 0 (height, m)". */
export function issueWords(
  issue: z.core.$ZodIssue,
  value: unknown,
  fields: readonly PropertyField[] = [],
  pathBefore: readonly PropertyKey[] = [],
): string {
  const found = at(value, issue.path);
  const field = fields.find((f) => f.key === issue.path[issue.path.length - 1]);
  const expected = coordinateExpected(issue.path, found) ?? expectedWords(issue, found);
  return `${pathWords([...pathBefore, ...issue.path])} ${foundWords(found)}; expected ${expected}${fieldWords(field)}`;
}

/** `geometry.coordinates[0][2]`, but `heightM` for `properties.heightM`: that is how a person sees it. */
function pathWords(path: readonly PropertyKey[]): string {
  const shown = path[0] === 'properties' && path.length > 1 ? path.slice(1) : path;
  return shown.reduce<string>(
    (words, step) =>
      typeof step === 'number'
        ? `${words}[${step}]`
        : words === ''
          ? String(step)
          : `${words}.${String(step)}`,
    '',
  );
}

/** "is -3", "is missing", "is a list of 3": short enough for one line whatever was found. */
export function foundWords(found: unknown): string {
  if (found === undefined) return 'is missing';
  if (Array.isArray(found)) return `is a list of ${found.length}`;
  if (typeof found === 'object' && found !== null) return 'is an object';
  const text = JSON.stringify(found) ?? String(found);
  return `is ${text.length > 60 ? `${text.slice(0, 57)}...` : text}`;
}

const at = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (inner, step) =>
      typeof inner === 'object' && inner !== null ? (inner as Record<PropertyKey, unknown>)[step] : undefined,
    value,
  );

const UNIT_WORDS: Partial<Record<PropertyField['unit'], string>> = {
  m: 'metres',
  'm2/m3': 'square metres of leaf in a cubic metre',
  share: 'a share of 1, not percent',
  year: 'a calendar year',
};
function fieldWords(field: PropertyField | undefined): string {
  const unit = field && UNIT_WORDS[field.unit];
  return unit ? ` (${unit})` : '';
}

/** Coordinates are worth words of their own: most wrong ones are swapped, or metres of a map grid. */
function coordinateExpected(path: readonly PropertyKey[], found: unknown): string | null {
  const isPosition = path.includes('coordinates') || path.some((step) => String(step).endsWith('LonLat'));
  const axis = path[path.length - 1];
  if (!isPosition || typeof found !== 'number') return null;
  const hint =
    Math.abs(found) > 360
      ? '; these look like metres of a map grid'
      : axis === 1
        ? '; are longitude and latitude swapped?'
        : '';
  if (axis === 0) return `a longitude from -180 to 180 (WGS 84 degrees${hint})`;
  if (axis === 1) return `a latitude from -90 to 90 (WGS 84 degrees, longitude first${hint})`;
  return null;
}

function expectedWords(issue: z.core.$ZodIssue, found: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE_WORDS[issue.expected] ?? `a ${issue.expected}`;
    case 'invalid_value':
      return issue.values.length === 1
        ? JSON.stringify(issue.values[0])
        : `one of ${issue.values.map((v) => JSON.stringify(v)).join(', ')}`;
    case 'too_small':
      if (issue.origin === 'array') return `${issue.exact ? 'exactly' : 'at least'} ${issue.minimum} entries`;
      return `a number ${issue.inclusive ? `of ${issue.minimum} or more` : `above ${issue.minimum}`}`;
    case 'too_big':
      if (issue.origin === 'array') return `${issue.exact ? 'exactly' : 'at most'} ${issue.maximum} entries`;
      return `a number of ${issue.maximum} or less`;
    case 'invalid_format':
      return issue.message;
    case 'invalid_union':
      // A choice by one member of an object: its validator's own words say what that may be.
      if (issue.errors.length === 0) return issue.message;
      return issue.errors
        .flatMap((errors) => errors.slice(0, 1).map((inner) => expectedWords(inner, found)))
        .join(' or ');
    default:
      return issue.message;
  }
}

const TYPE_WORDS: Partial<Record<string, string>> = {
  undefined: 'nothing',
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list of coordinates',
  object: 'an object',
};
