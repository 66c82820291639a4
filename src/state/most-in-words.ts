import type { CauseChange, EndChange } from '../jobs/run-ends-causes.ts';
import { SCENE_ENDS, type SceneEnd } from '../scene/ends.ts';
import {
  CAUSE_NAMES,
  changeInFigures,
  changeInWords,
  differenceInFigures,
  differenceInWords,
  END_NAMES,
  HARDLY,
  supposedInWords,
  supposing,
} from './end-words.ts';
import type { AppState, Picture } from './model.ts';
import { isSunTime } from './sun-times.ts';
import { causesOfMap } from './what-would-change.ts';

const byMore = (a: EndChange, b: EndChange): number =>
  Math.abs(b.mean - b.usual) - Math.abs(a.mean - a.usual);
/** A change of the mean below this is rounding. */
const NOTHING = 1e-6;

/** What would change the map most, in one or two sentences; null where nothing can be said yet, or of a plain map. */
export function mostInWords(state: AppState): string | null {
  const { picture } = state;
  if (picture === 'plain') return null;
  if (picture === 'slope')
    return `Only other levels of the ground would change it. ${state.groundDescription}.`;
  if (picture === 'cold-air')
    return `Other levels of the ground, and what is dense down to it in year ${state.year}: a belt with an open foot of half a metre, a gap, or daylight through it lets cold air out. ${state.groundDescription}.`;
  const causes = causesOfMap(state);
  if (!causes) return null;
  const grown = causes.filter(({ cause }) => cause !== 'engine');
  const largest = [...grown[0].ends].sort(byMore);
  if (Math.abs(largest[0].mean - largest[0].usual) < NOTHING)
    return `Nothing that grows reaches this ground.${engineInWords(picture, causes)}`;
  const said = largest.map((change) => changeInWords(picture, change));
  if (said.every((words) => words === HARDLY))
    return `Hardly anything: nothing that is not known changes its mean by a ${isSunTime(picture) ? 'minute' : 'percent'}.${engineInWords(picture, causes)}`;
  const sentences = largest.map(
    ({ end }, i) => `${end === null ? CAUSE_NAMES.engine : supposing(end)}: ${said[i]}.`,
  );
  const first = causes[0].cause === 'engine' ? `${engineInWords(picture, causes).trim()} ` : '';
  return first + sentences.join(' ');
}

function engineInWords(picture: Picture, causes: readonly CauseChange[]): string {
  const engine = causes.find(({ cause }) => cause === 'engine');
  return engine
    ? ` ${CAUSE_NAMES.engine} are off by ${differenceInWords(picture, engine.ends[1].mean - engine.ends[1].usual)} in the mean.`
    : '';
}

/** One row of what is not known, with both its ends: "Crown spread", "a fifth wider: −12 %". */
export interface CauseRow {
  readonly cause: CauseChange['cause'];
  readonly name: string;
  readonly ends: readonly string[];
  /** By how much or more the larger end changes a tenth of the ground: "24 %"; empty for the engine. */
  readonly widely: string;
}

/** What would change the map, as `causesOfMap` has it, in rows of words. */
export const causeRows = (picture: Picture, causes: readonly CauseChange[]): readonly CauseRow[] =>
  causes.map(({ cause, ends }) => ({
    cause,
    name: CAUSE_NAMES[cause],
    ends:
      cause === 'engine'
        ? [`off by ${differenceInWords(picture, ends[1].mean - ends[1].usual)}`]
        : ends.map((change) => `${END_NAMES[change.end as SceneEnd]}: ${changeInFigures(picture, change)}`),
    widely:
      cause === 'engine'
        ? ''
        : differenceInFigures(picture, Math.max(...ends.map(({ widelyBy }) => widelyBy))),
  }));

/** An end the map can be drawn at. */
export interface EndChoice {
  readonly end: SceneEnd;
  /** "crowns a fifth wider: −12 %". */
  readonly words: string;
}

/** The ends of the map that is shown, those of the largest cause first; none for maps that nothing grown changes. */
export function endChoices(picture: Picture, causes: readonly CauseChange[] | null): readonly EndChoice[] {
  if (picture === 'plain' || picture === 'slope' || picture === 'cold-air') return [];
  const known = (causes ?? []).flatMap(({ ends }) => ends).filter(({ end }) => end !== null);
  const inOrder = known.length > 0 ? known.map(({ end }) => end as SceneEnd) : SCENE_ENDS;
  return inOrder.map((end) => {
    const change = known.find((each) => each.end === end);
    const words = supposedInWords(end) as string;
    return { end, words: change ? `${words}: ${changeInFigures(picture, change)}` : words };
  });
}
