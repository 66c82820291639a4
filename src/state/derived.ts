import { sameContent } from '../numeric/same-content.ts';
import { atEnd } from '../scene/ends.ts';
import { growPlan } from '../scene/grow-plan.ts';
import { siteCentre, siteFrame, siteGround } from '../scene/site-ground.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { AppState } from './model.ts';

const sameFrame = (a: AppState['frame'], b: AppState['frame']): boolean =>
  a.epsg === b.epsg && a.originEastingM === b.originEastingM && a.originNorthingM === b.originNorthingM;

/**
 * What follows from the document and the view: frame, ground, the plan grown to the year. Only what its inputs changed
 * is worked out again; a site that cannot be grown or laid out keeps the last and says why.
 */
export function derived(state: AppState, before: AppState): Partial<AppState> {
  const part: { -readonly [Key in keyof AppState]?: AppState[Key] } = {};
  const documentChanged = state.document !== before.document;
  try {
    let { frame } = state;
    if (documentChanged) {
      part.centre = siteCentre(state.document);
      const next = siteFrame(state.document);
      if (!sameFrame(next, frame)) {
        frame = next;
        part.frame = next;
      }
    }
    if (documentChanged || state.terrain !== before.terrain || part.frame) {
      const { ground, description } = siteGround(state.document, frame, state.terrain);
      // The same ground made anew would have every map drawn again for a name that is typed.
      part.ground = state.ground && sameContent(ground, state.ground) ? state.ground : ground;
      part.groundDescription = description;
    }
    if (
      documentChanged ||
      part.frame ||
      state.year !== before.year ||
      state.layout !== before.layout ||
      state.felled !== before.felled ||
      state.stepped.result !== before.stepped.result ||
      state.shownEnd !== before.shownEnd
    ) {
      const { year, layout, felled, stepped } = state;
      part.grown = growPlan(
        state.document,
        atEnd({ year, layout, felled, speeds: stepped.result, pace: 'usual', frame }, state.shownEnd),
      );
    }
  } catch (reason) {
    if (!(reason instanceof BadInputError)) throw reason;
    part.message = { tone: 'warning', text: reason.message };
  }
  return part;
}
