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

/** What came of a field's conditions, in one or more sentences. */
export function judgedWords(name: string, judged: readonly Judged[], units: ChooseUnits): string {
  const failed = judged.filter(({ met }) => met === false);
  const unknown = judged.filter(({ met }) => met === null);
  const said = [
    failed.length > 0
      ? `${name} is out: ${failed.map((one) => failedWords(one, units)).join('; ')}.`
      : `${name} stays in.`,
  ];
  if (unknown.length > 0)
    said.push(
      `It cannot be judged by this: ${listInWords(
        unknown.map(({ condition }) => knockOutWords(condition, units)),
        unknown.length,
      )}; nothing of the kind is drawn.`,
    );
  return said.join(' ');
}

/** "no steeper than 12.0° was asked, 14.2° is found" */
function failedWords({ condition, value }: Judged, units: ChooseUnits): string {
  const found = figureWords(value, measureOf(condition.measure).unit, units);
  return `${knockOutWords(condition, units)} was asked, ${found} is found`;
}
