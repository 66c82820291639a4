/** Figures of fields in words that can be read aloud; the same on the screen, on paper and on the command line. */
import type { Matter } from '../site/records/choosing.ts';
import { directionWord } from '../units/compass.ts';
import type { FieldFigures, FieldStateKey, ShelteredFrom } from './choose-types.ts';
import { FIELD_STATES } from './choose-types.ts';
import type { Measure, MeasureUnit } from './measure-types.ts';
import { measureOf, stateOf } from './measures.ts';

/** How a person's lengths and areas are written. */
export interface ChooseUnits {
  readonly length: (lengthM: number) => string;
  readonly area: (areaM2: number) => string;
}

const MINUS = '−';
const HECTARE_M2 = 10_000;
/** Areas from this share of a hectare on are told in hectares. */
const IN_HECTARES_M2 = 1000;

/** Whole metres or feet; under ten of them to a tenth. */
export const lengthWords = (length: number, unit: string): string =>
  `${length < 10 ? Number(length.toFixed(1)) : grouped(length)} ${unit}`;
export const METRIC: ChooseUnits = {
  length: (lengthM) => lengthWords(lengthM, 'm'),
  area: (areaM2) => {
    if (areaM2 < 1) return '0 ha';
    return areaM2 < IN_HECTARES_M2 ? `${Math.round(areaM2)} m²` : `${(areaM2 / HECTARE_M2).toFixed(2)} ha`;
  },
};

function grouped(value: number): string {
  return Math.round(value).toLocaleString('en-GB');
}

/** "53 %"; a share that is not quite nothing or all is not said to be. */
export function percentWords(share: number): string {
  const percent = Math.round(share * 100);
  if (percent === 100 && share < 0.999) return '99 %';
  if (percent === 0 && share > 0.001) return 'under 1 %';
  return percent < 0 ? `${MINUS}${-percent} %` : `${Math.abs(percent)} %`;
}

/** A figure in its unit. @param value null: not known; Infinity: never. */
export function figureWords(value: number | null, unit: MeasureUnit, units: ChooseUnits): string {
  if (value === null) return unit === 'bearing' ? 'level' : 'not known';
  switch (unit) {
    case 'm2':
      return units.area(value);
    case 'm':
      return units.length(value);
    case 'share':
      return percentWords(value);
    case 'hours':
      return `${grouped(value)} h`;
    case 'deg':
      return `${value.toFixed(1)}°`;
    case 'bearing':
      return directionWord(value);
    case 'year':
      return value === Number.POSITIVE_INFINITY ? NOT_WITHIN : value === 0 ? 'already' : `year ${value}`;
    case 'index':
      return value.toFixed(1);
  }
}

const NOT_WITHIN = 'not within 40 years';

/** "year 9 (7 to 12)", "already", "year 31 at the earliest". */
function shelteredFromWords({ slow, usual, fast }: ShelteredFrom): string {
  if (usual === null) return fast === null ? NOT_WITHIN : `year ${fast} at the earliest`;
  if (usual === 0 && slow === 0) return 'already';
  const late = slow === null ? 'after 40' : String(slow);
  return fast === slow ? `year ${usual}` : `year ${usual} (${fast} to ${late})`;
}

/** What stands between the figures of several states. */
const BETWEEN = ' · ';

/** A measure's cell for a field; with several states, one after another, once where all are alike. */
export function cellWords(
  measure: Measure,
  field: FieldFigures,
  units: ChooseUnits,
  wanted: readonly FieldStateKey[] = FIELD_STATES,
): string {
  if (measure.key === 'shelteredFromYear') return shelteredFromWords(field.shelteredFrom);
  const states: readonly FieldStateKey[] = measure.byState ? wanted : ['stands'];
  const words = states.map((state) => figureWords(measure.of(field, state), measure.unit, units));
  if (words.every((each) => each === words[0])) return words[0];
  // One unit at the end reads better than four.
  const unit = /[^\d,.−-]+$/.exec(words[0])?.[0];
  const shared = unit !== undefined && words.every((each) => /^[\d,.−-]/.test(each) && each.endsWith(unit));
  if (!shared) return words.join(BETWEEN);
  return `${words.map((each) => each.slice(0, -unit.length)).join(BETWEEN)}${unit}`;
}

/** What several figures of a cell are: "as it stands · with what is planned in year 10 · 20". */
export const statesWords = (states: readonly FieldStateKey[]): string =>
  states
    .map((state, k) =>
      state !== 'stands' && k > 0 && states[k - 1] !== 'stands' ? String(state) : stateWords(state),
    )
    .join(BETWEEN);

/** A matter as it is listed: "ground with both, as it stands". */
export function matterWords(matter: Matter): string {
  const { what, byState } = measureOf(matter.measure);
  const name = `${what.charAt(0).toLowerCase()}${what.slice(1)}`;
  return byState ? `${name}, ${stateWords(stateOf(matter))}` : name;
}

const stateWords = (state: FieldStateKey): string =>
  state === 'stands' ? 'as it stands' : `with what is planned in year ${state}`;
