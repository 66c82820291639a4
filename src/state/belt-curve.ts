import { type BeltCurve, beltCurve } from '../scene/belt-curve.ts';
import { isOfKind } from '../site/chosen-features.ts';
import type { SiteFeature } from '../site/document.ts';
import type { AppState } from './model.ts';
import { sceneOptions } from './scene-options.ts';

export { type BeltCurve, MEASURED_BELTS } from '../scene/belt-curve.ts';

/** How far a belt or wall shelters as the app is set; null: it is neither, or not there in the chosen year. */
/** What the curve of a belt hangs on besides the belt. */
export const curveSetting = ({
  document,
  ground,
  year,
  layout,
  felled,
  stepped,
  frame,
  weather,
  terrain,
  surface,
  shownEnd,
}: AppState) => ({
  document,
  ground,
  year,
  layout,
  felled,
  stepped,
  frame,
  weather,
  terrain,
  surface,
  shownEnd,
});

export function beltCurveOf(state: ReturnType<typeof curveSetting>, feature: SiteFeature): BeltCurve | null {
  if (!state.ground || !(isOfKind(feature, 'belt') || isOfKind(feature, 'wall'))) return null;
  return beltCurve(state.document, feature, sceneOptions(state, state.ground));
}

/** Metres to the next 5 from 50 on: nobody can say it closer. */
export const roughlyM = (lengthM: number): number =>
  lengthM < 50 ? Math.round(lengthM) : 5 * Math.round(lengthM / 5);
