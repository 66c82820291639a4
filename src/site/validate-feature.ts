import { BadInputError } from '../units/bad-input.ts';
import type { SiteFeature } from './document.ts';
import { foundWords, issueWords } from './issue-sentence.ts';
import { isKind, REGISTRY } from './records/registry.ts';
import { ringFault } from './ring-crossing.ts';

/**
 * Checks one feature of a known kind in full: its shape, its properties, and what no validator of single properties
 * sees (a boundary that crosses itself, a crown base above its top).
 * @param where what to put before the sentence, such as a file's name and a colon; may be empty.
 * @throws BadInputError with the first fault found.
 */
export function validateFeature(value: unknown, where = ''): asserts value is SiteFeature {
  const feature = value as {
    id?: unknown;
    geometry?: { type?: unknown } | null;
    properties: Record<string, unknown>;
  };
  const kind = feature.properties.kind;
  if (!isKind(kind))
    throw new BadInputError(`${where}feature ${idWords(feature.id)}: kind ${foundWords(kind)}`);
  const record = REGISTRY[kind];
  const fail = (sentence: string): never => {
    throw new BadInputError(`${where}${kind} ${idWords(feature.id)}: ${sentence}.`);
  };

  // Before the validator: its report on a choice of shapes names the wrong branch.
  const type = feature.geometry?.type;
  if (!record.geometryTypes.some((allowed) => allowed === type)) {
    const found = typeof type === 'string' ? type : 'missing';
    fail(`geometry is ${found}; expected ${record.geometryTypes.join(' or ')} for a ${record.label}`);
  }
  const result = record.schema.safeParse(value);
  if (!result.success) fail(mostTelling(result.error.issues, value, record.fields));

  const valid = value as SiteFeature;
  if (valid.geometry.type === 'Polygon') {
    const rings = valid.geometry.coordinates;
    for (let r = 0; r < rings.length; r++) {
      const fault = ringFault(rings[r]);
      if (fault) {
        const ring = rings.length === 1 ? 'the boundary' : r === 0 ? 'the outer boundary' : `hole ${r}`;
        const place = `${round(fault.at[0])}, ${round(fault.at[1])}`;
        fail(`geometry: ${ring} ${fault.fault} at ${place}; expected ${RING_EXPECTED[fault.fault]}`);
      }
    }
  }
  const base = baseAboveTop(valid);
  if (base) fail(base);
}

const RING_EXPECTED = {
  'crosses itself': 'a closed line that meets itself only at its ends',
  'has no area': 'at least three corners that are not in one line',
  'is not closed': 'the last position to repeat the first',
} as const;

const idWords = (id: unknown): string => (id === undefined ? 'without id' : JSON.stringify(id));
const round = (deg: number): number => Number(deg.toFixed(6));

/**
 * A crown or belt whose lowest leaves are at or above its top. A planned tree's `heightM` is its height at planting,
 * which it will outgrow: a clear stem of 1.8 m on a whip of 1.2 m is a plan, not a slip.
 */
function baseAboveTop(feature: SiteFeature): string | null {
  const p = feature.properties;
  if (p.kind !== 'tree' && p.kind !== 'belt' && p.kind !== 'block') return null;
  const baseKey = p.kind === 'tree' ? 'crownBaseM' : 'baseHeightM';
  const base = p.kind === 'tree' ? p.crownBaseM : p.baseHeightM;
  if (base === undefined || p.heightM === undefined || base < p.heightM) return null;
  const stillToGrow =
    p.status !== 'existing' &&
    p.species !== undefined &&
    p.plantedYear !== undefined &&
    p.measuredYear === undefined;
  return stillToGrow ? null : `${baseKey} is ${base}; expected less than its heightM, ${p.heightM} (metres)`;
}

/** One sentence for several issues: the first about a property, as a person reads those first. */
function mostTelling(
  issues: Parameters<typeof issueWords>[0][],
  value: unknown,
  fields: Parameters<typeof issueWords>[2],
): string {
  const geometry = (value as { geometry: { type: string } }).geometry;
  const issue = issues[0];
  if (issue.code === 'invalid_union' && issue.path[0] === 'geometry') {
    const branch = issue.errors.find((errors) => !errors.some((e) => e.path[0] === 'type'));
    if (branch) return issueWords(branch[0], geometry, fields, ['geometry']);
  }
  return issueWords(issue, value, fields);
}
