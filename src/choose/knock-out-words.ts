/** Conditions and what came of them, in words. */
import type { KnockOut } from '../site/records/choosing.ts';
import { listInWords } from '../units/list-in-words.ts';
import type { Judged } from './knock-outs.ts';
import { type ChooseUnits, figureWords, matterWords } from './measure-words.ts';
import { measureOf, stateOf } from './measures.ts';

/** "no frost hollow: at most 10 % of it lies in one" */
export function knockOutWords(condition: KnockOut, units: ChooseUnits): string {
  const { measure, atLeast, atMost } = condition;
  const limit = figureWords((atLeast ?? atMost) as number, measureOf(measure).unit, units);
  const state = stateOf(condition);
  const by = state === 'stands' ? '' : state === 0 ? ' in year 0' : ` by year ${state}`;
  if (measure === 'hollowShare' && atMost !== undefined)
    return `no frost hollow (at most ${limit} of it lies in one)`;
  if (measure === 'toAccessM' && atMost !== undefined)
    return `a lorry can get there (a path or track within ${limit})`;
  if (measure === 'toWaterM' && atMost !== undefined) return `water within ${limit}`;
  if (measure === 'shelteredM2' && atLeast !== undefined) return `at least ${limit} in shelter${by}`;
  if (measure === 'bothM2' && atLeast !== undefined)
    return `at least ${limit} with both light and shelter${by}`;
  if (measure === 'areaM2' && atLeast !== undefined) return `at least ${limit}`;
  if (measure === 'slopeDeg' && atMost !== undefined) return `no steeper than ${limit}`;
  if (measure === 'shelteredFromYear' && atMost !== undefined)
    return `half of it in shelter by year ${atMost}`;
  return `${matterWords(condition)}: ${atLeast === undefined ? 'at most' : 'at least'} ${limit}`;
}

/** "it lies in a frost hollow: 75 %", with the figure that decided. */
export const decidedBy = ({ condition, value }: Judged, units: ChooseUnits): string =>
  `${matterWords(condition)}: ${figureWords(value, measureOf(condition.measure).unit, units)}`;

/** What came of a field's conditions, in one or two sentences. */
export function judgedWords(name: string, judged: readonly Judged[], units: ChooseUnits): string {
  const failed = judged.filter(({ met }) => met === false);
  const unknown = judged.filter(({ met }) => met === null);
  const said: string[] = [];
  if (failed.length > 0)
    said.push(
      `${name} is out: ${failed
        .map((one) => `asked was ${knockOutWords(one.condition, units)}, found is ${decidedBy(one, units)}`)
        .join('; ')}.`,
    );
  else if (judged.length > unknown.length) said.push(`${name} stays in.`);
  if (unknown.length > 0)
    said.push(
      `${failed.length === 0 && said.length === 0 ? name : 'It'} cannot be judged by ${listInWords(unknown.map(({ condition }) => matterWords(condition)))}: nothing of the kind is drawn or known.`,
    );
  return said.join(' ');
}
