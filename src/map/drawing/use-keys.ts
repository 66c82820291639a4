import type { Map as MapLibre } from 'maplibre-gl';
import { type RefObject, useEffect } from 'react';
import type { LonLat } from '../../geo/frame.ts';
import { appStore } from '../../state/store.ts';
import { motionReduced } from '../use-fit-to-site.ts';
import { cornersOf } from './corners.ts';
import {
  abandon,
  changeCorner,
  choose,
  deleteSelected,
  duplicateSelected,
  featureOf,
  layDown,
  lookAroundAt,
  moveInHand,
  placeInHand,
  startMoving,
  startReshaping,
  takeSketchStep,
  windAtPlace,
} from './hand-actions.ts';
import { handStore } from './hand-store.ts';
import { type KeyCommand, keyCommand } from './key-commands.ts';
import { pickAt } from './pick.ts';
import { crossMoved } from './sketch.ts';

/** How near to the cross a point or line must be to be chosen by Enter, metres. */
const REACH_M = 1.5;
/** Enter pressed again without a step between finishes a shape. */
const SAME_PLACE_M = 0.005;
/** The map moves on when the cross comes this close to its edge, px. */
const EDGE_PX = 56;

const middleOf = (map: MapLibre): LonLat => {
  const { lng, lat } = map.getCenter();
  return [lng, lat];
};

function keepInView(map: MapLibre, place: LonLat): void {
  const { x, y } = map.project([place[0], place[1]]);
  const { clientWidth, clientHeight } = map.getContainer();
  if (x < EDGE_PX || y < EDGE_PX || x > clientWidth - EDGE_PX || y > clientHeight - EDGE_PX)
    map.easeTo({ center: [place[0], place[1]], duration: motionReduced() ? 0 : 150 });
}

/** The map's keyboard: the cross, drawing, moving, reshaping, choosing. Keys it has no use for are left alone. */
export function useKeys(
  map: MapLibre | null,
  sheet: RefObject<HTMLElement | null>,
  showWholeSite: () => void,
): void {
  useEffect(() => {
    const element = sheet.current;
    if (!map || !element) return;
    const pressed = (event: KeyboardEvent) => {
      const command = keyCommand(event);
      if (!command || !obey(map, command, showWholeSite)) return;
      event.preventDefault();
      event.stopPropagation();
    };
    element.addEventListener('keydown', pressed);
    return () => element.removeEventListener('keydown', pressed);
  }, [map, sheet, showWholeSite]);
}

/** True when the command meant something here. */
function obey(map: MapLibre, command: KeyCommand, showWholeSite: () => void): boolean {
  const app = appStore.getState();
  const { hand } = app;
  switch (command.do) {
    case 'step':
      step(map, command.turnDeg, command.lengthM);
      return true;
    case 'corner': {
      if (hand.doing !== 'reshaping') return false;
      const feature = featureOf(hand.id);
      const count = feature ? cornersOf(feature.geometry).length : 1;
      const { corner } = handStore.getState();
      handStore.setState({ corner: (corner + command.by + count) % count });
      return true;
    }
    case 'place':
      place(map);
      return true;
    case 'finish':
      if (hand.doing === 'drawing') takeSketchStep({ do: 'finish' });
      else layDown();
      return true;
    case 'take-back':
      if (hand.doing !== 'drawing') return false;
      takeSketchStep({ do: 'take-back' });
      return true;
    case 'undo':
      // A half-drawn shape takes its last point back; anything else is the site's own undo.
      if (hand.doing !== 'drawing' || !handStore.getState().sketch?.corners.length) return false;
      takeSketchStep({ do: 'take-back' });
      return true;
    case 'abandon':
      abandon();
      return true;
    case 'delete':
      if (hand.doing === 'reshaping') changeCorner(hand.id, 'remove');
      else deleteSelected();
      return true;
    case 'add-corner':
      if (hand.doing !== 'reshaping') return false;
      changeCorner(hand.id, 'add');
      return true;
    case 'duplicate':
      if (app.selection === null) return false;
      duplicateSelected();
      return true;
    case 'move':
    case 'reshape':
      if (app.selection === null || hand.doing === 'drawing') return false;
      if (command.do === 'move') startMoving(app.selection);
      else startReshaping(app.selection);
      return true;
    case 'zoom-in':
    case 'zoom-out':
      map.easeTo({
        zoom: map.getZoom() + (command.do === 'zoom-in' ? 0.5 : -0.5),
        around: placeInHand(middleOf(map)) as [number, number],
        duration: motionReduced() ? 0 : 120,
      });
      return true;
    case 'whole-site':
      showWholeSite();
      return true;
    case 'horizon':
      if (hand.doing !== 'looking' || app.ground === null) return false;
      lookAroundAt(placeInHand(middleOf(map)));
      return true;
    case 'wind':
      if (hand.doing !== 'looking' || app.ground === null) return false;
      windAtPlace(placeInHand(middleOf(map)));
      return true;
  }
}

function step(map: MapLibre, turnDeg: number, lengthM: number): void {
  const app = appStore.getState();
  const { hand } = app;
  const upDeg = map.getBearing();
  if (hand.doing === 'moving') {
    moveInHand(hand.id, upDeg + turnDeg, lengthM);
    return;
  }
  if (hand.doing === 'reshaping') {
    changeCorner(hand.id, { turnDeg: upDeg + turnDeg, lengthM });
    return;
  }
  const from = placeInHand(middleOf(map));
  // The first press only shows the cross where the map is looked at.
  const to =
    app.pointer === null && hand.doing !== 'drawing' ? from : crossMoved(from, upDeg, turnDeg, lengthM);
  takeSketchStep({ do: 'move', to });
  app.setPointer(to);
  keepInView(map, to);
}

function place(map: MapLibre): void {
  const app = appStore.getState();
  const { hand } = app;
  const here = placeInHand(middleOf(map));
  if (hand.doing === 'drawing') {
    if (app.pointer === null) app.setPointer(here);
    takeSketchStep({ do: 'place', reachM: SAME_PLACE_M });
  } else if (hand.doing === 'pointing') app.pointGiven(here);
  else if (hand.doing === 'looking') {
    if (app.pointer === null) app.setPointer(here);
    choose(pickAt(app, here, REACH_M));
  } else layDown();
}
