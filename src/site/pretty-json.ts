/** Longest line that a list or an object may fill before it is broken over several. */
const LINE_CHARACTERS = 110;

/** JSON for people and for version control: two spaces, short lists and objects on one line, positions never broken. */
export function prettyJson(value: unknown, indent = ''): string {
  const short = oneLine(value);
  if (typeof value !== 'object' || value === null || isPosition(value)) return short;
  if (indent.length + short.length <= LINE_CHARACTERS && !isDeep(value)) return short;
  const inner = `${indent}  `;
  if (Array.isArray(value))
    return `[\n${value.map((v) => inner + prettyJson(v, inner)).join(',\n')}\n${indent}]`;
  const members = Object.entries(value)
    .filter(([, v]) => v !== undefined)
    .map(([key, v]) => `${inner}${JSON.stringify(key)}: ${prettyJson(v, inner)}`);
  return members.length === 0 ? '{}' : `{\n${members.join(',\n')}\n${indent}}`;
}

const isPosition = (value: object): boolean =>
  Array.isArray(value) && value.length <= 4 && value.every((v) => typeof v === 'number');

/** Objects that hold objects are broken even where they would fit: a feature never hides in one line. */
const isDeep = (value: object): boolean =>
  !Array.isArray(value) &&
  Object.values(value).some((v) => typeof v === 'object' && v !== null && !Array.isArray(v));

function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value ?? null);
  const members = Object.entries(value)
    .filter(([, v]) => v !== undefined)
    .map(([key, v]) => `${JSON.stringify(key)}: ${oneLine(v)}`);
  return members.length === 0 ? '{}' : `{ ${members.join(', ')} }`;
}
