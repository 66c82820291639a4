import type { LonLat } from '../../geo/frame.ts';
import { deleteFeatures } from '../../site/actions/delete-feature.ts';
import { duplicateFeatures } from '../../site/actions/duplicate-feature.ts';
import { moveFeatures } from '../../site/actions/move-feature.ts';
import { reshapeFeature } from '../../site/actions/reshape-feature.ts';
import type { FeatureId, SiteFeature } from '../../site/document.ts';
import { drawFinished } from '../../state/draw-finished.ts';
import { appStore } from '../../state/store.ts';
import { kindName } from '../plan-features.ts';
import { cornersOf, withCornerAfter, withCornerAt, withoutCorner } from './corners.ts';
import { handStore } from './hand-store.ts';
import { crossMoved, type SketchStep, stepSketch } from './sketch.ts';

/** A copy is laid this far to the east and south of its original, metres. */
const COPY_OFF_M = 3;

export const featureOf = (id: FeatureId | null): SiteFeature | null =>
  appStore.getState().document.features.find((feature) => feature.id === id) ?? null;

/** What to call a feature in a sentence: its name, its tag, or what it is. */
export function calledIn(feature: SiteFeature): string {
  const { properties } = feature;
  const kind = kindName(feature).toLowerCase();
  if (properties.kind === 'tree' && properties.tag) return `tree ${properties.tag}`;
  return properties.name ? `${kind} “${properties.name}”` : kind;
}

const speak = (spoken: string): void => handStore.setState({ spoken });

/** One step of the sketch; what is finished goes to the site, a refusal is said. */
export function takeSketchStep(step: SketchStep): void {
  const { sketch } = handStore.getState();
  const app = appStore.getState();
  if (!sketch || app.hand.doing !== 'drawing') return;
  const { kind } = app.hand;
  const outcome = stepSketch(sketch, step);
  handStore.setState({ sketch: outcome.sketch });
  if (outcome.refusal) app.say({ tone: 'plain', text: outcome.refusal });
  if (outcome.finished) drawFinished(kind, outcome.finished);
}

/** Puts the hand back to looking; what was half drawn or moved is undone. */
export function abandon(): void {
  const app = appStore.getState();
  const { hand } = app;
  const { sketch } = handStore.getState();
  if (hand.doing === 'looking') {
    if (app.selection !== null) app.select(null);
    else app.setPointer(null);
    return;
  }
  if (hand.doing === 'drawing' && sketch && sketch.corners.length > 0) {
    handStore.setState({ sketch: { ...sketch, corners: [] } });
    return;
  }
  if (hand.doing === 'moving' || hand.doing === 'reshaping') app.abandonGesture();
  app.takeHand({ doing: 'looking' });
}

/** Opens the horizon as it is seen from a place. */
export const lookAroundAt = (place: LonLat): void =>
  appStore.getState().show({ dialog: 'horizon', horizonAt: place });

/** Opens the wind of a place: from where it is sheltered, and by what. */
export const windAtPlace = (place: LonLat): void =>
  appStore.getState().show({ dialog: 'wind-here', windAt: place });

/** Gives the whole drawing up at once, points and all. */
export const leaveDrawing = (): void => appStore.getState().takeHand({ doing: 'looking' });

export function startMoving(id: FeatureId): void {
  handStore.setState({ moved: { eastM: 0, northM: 0 } });
  appStore.getState().takeHand({ doing: 'moving', id });
}

export function startReshaping(id: FeatureId): void {
  const feature = featureOf(id);
  if (!feature) return;
  if (feature.geometry.type === 'Point') startMoving(id);
  else {
    handStore.setState({ corner: 0 });
    appStore.getState().takeHand({ doing: 'reshaping', id });
  }
}

/** Moves the feature in hand by keys: a preview from where it stood when it was taken. */
export function moveInHand(id: FeatureId, azimuthDeg: number, lengthM: number): void {
  const { moved } = handStore.getState();
  const turn = (azimuthDeg * Math.PI) / 180;
  const eastM = moved.eastM + lengthM * Math.sin(turn);
  const northM = moved.northM + lengthM * Math.cos(turn);
  handStore.setState({ moved: { eastM, northM } });
  appStore.getState().preview((document) => moveFeatures(document, [id], eastM, northM));
}

/** Lays down what is in hand: one undo step for all of its moves. */
export function layDown(): void {
  const app = appStore.getState();
  const { hand } = app;
  if (hand.doing !== 'moving' && hand.doing !== 'reshaping') return;
  const feature = featureOf(hand.id);
  if (feature) app.commitGesture(`${hand.doing === 'moving' ? 'Move' : 'Reshape'} ${calledIn(feature)}`);
  app.takeHand({ doing: 'looking' });
}

/** Moves, adds or removes the chosen corner of the feature that is being reshaped; a preview until it is laid down. */
export function changeCorner(
  id: FeatureId,
  change: { readonly turnDeg: number; readonly lengthM: number } | 'add' | 'remove',
): void {
  const feature = featureOf(id);
  if (!feature) return;
  const shape = feature.geometry;
  const corners = cornersOf(shape);
  const corner = Math.min(handStore.getState().corner, corners.length - 1);
  if (change === 'add' || change === 'remove') {
    const next = change === 'add' ? withCornerAfter(shape, corner) : withoutCorner(shape, corner);
    if (!next) {
      appStore.getState().say({
        tone: 'plain',
        text: change === 'add' ? 'There is no side after this point.' : 'Fewer points would leave no shape.',
      });
      return;
    }
    previewShape(id, next);
    handStore.setState({ corner: change === 'add' ? corner + 1 : Math.max(0, corner - 1) });
    return;
  }
  previewShape(
    id,
    withCornerAt(shape, corner, crossMoved(corners[corner], 0, change.turnDeg, change.lengthM)),
  );
}

export const previewShape = (id: FeatureId, shape: SiteFeature['geometry']): void =>
  appStore.getState().preview((document) => reshapeFeature(document, id, shape));

export function deleteSelected(): void {
  const app = appStore.getState();
  const feature = featureOf(app.selection);
  if (!feature) return;
  app.edit(`Delete ${calledIn(feature)}`, (document) => deleteFeatures(document, [feature.id]));
  if (app.hand.doing !== 'looking') app.takeHand({ doing: 'looking' });
  speak(`Deleted ${calledIn(feature)}. Control Z brings it back.`);
}

export function duplicateSelected(): void {
  const app = appStore.getState();
  const feature = featureOf(app.selection);
  if (!feature) return;
  let copy: FeatureId | null = null;
  app.edit(`Copy ${calledIn(feature)}`, (document) => {
    const made = duplicateFeatures(document, [feature.id], COPY_OFF_M, -COPY_OFF_M);
    copy = made.ids[0];
    return made.document;
  });
  if (copy === null) return;
  appStore.getState().select(copy);
  startMoving(copy);
}

/** Chooses what is at a place, or nothing. */
export function choose(id: FeatureId | null): void {
  appStore.getState().select(id);
  const feature = featureOf(id);
  speak(feature ? `Chosen: ${calledIn(feature)}.` : 'Nothing here.');
}

/** The place in hand: where the cross of the sketch is, else the pointer, else the middle of the map. */
export const placeInHand = (middle: LonLat): LonLat =>
  handStore.getState().sketch?.cross ?? appStore.getState().pointer ?? middle;
