import { BadInputError } from '../units/bad-input.ts';

/** A site file is text of a few hundred kilobytes; beyond this it is something else. */
const MAX_CHARACTERS = 64e6;

/**
 * The JSON object in a text.
 * @throws BadInputError for an empty, oversized, cut-off or foreign text, naming the line where reading stopped.
 */
export function readJsonObject(text: string, fileName: string): Record<string, unknown> {
  if (text.length > MAX_CHARACTERS)
    throw new BadInputError(
      `${fileName}: the file has ${Math.round(text.length / 1e6)} million characters; expected a site file of less than ${MAX_CHARACTERS / 1e6} million.`,
    );
  // A byte order mark in front is common from Windows editors and is not JSON.
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (body.trim() === '')
    throw new BadInputError(`${fileName}: the file is empty; expected a site file (GeoJSON).`);
  let value: unknown;
  try {
    value = JSON.parse(body);
  } catch (error) {
    throw new BadInputError(
      `${fileName}: ${brokenWords(body, error)}; expected a whole site file (GeoJSON).`,
    );
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new BadInputError(
      `${fileName}: the file is JSON but holds ${Array.isArray(value) ? 'a list' : JSON.stringify(value)?.slice(0, 40)}; expected a GeoJSON FeatureCollection.`,
    );
  return value as Record<string, unknown>;
}

function brokenWords(body: string, error: unknown): string {
  const opening = body.trimStart()[0];
  if (opening !== '{' && opening !== '[') return 'the file is not JSON';
  const position = Number(/at position (\d+)/.exec(String(error))?.[1] ?? body.length);
  const line = body.slice(0, position).split('\n').length;
  // Cut short when nothing but the end is wrong: the parser got as far as the last characters.
  const cut = /end of JSON|Unterminated string/.test(String(error)) || position >= body.trimEnd().length;
  return cut
    ? `the JSON breaks off in line ${line}, as if the file were cut short`
    : `the JSON is broken in line ${line}`;
}
