import type { LngLat, Map as MapLibre, MapMouseEvent, MapTouchEvent, PointLike } from 'maplibre-gl';
import { useEffect } from 'react';
import type { LonLat } from '../../geo/frame.ts';
import { moveFeatureTo } from '../../site/actions/move-feature.ts';
import { appStore } from '../../state/store.ts';
import { metresPerPixel } from '../scale-length.ts';
import { calledIn, choose, featureOf, layDown, takeSketchStep } from './hand-actions.ts';
import { handStore } from './hand-store.ts';
import { pickAt } from './pick.ts';

/** How far from a thing a press still means it, px: fingers are wider than the point of a mouse. */
const REACH_PX = { mouse: 7, touch: 18 } as const;
/** A press that moves less than this is a press, not a drag, px. */
const STILL_PX = 4;

/** How long after a touch mouse events may still be its echo. */
const AFTER_TOUCH_MS = 800;

/** The mouse may go so far from a held place, to what is written beside it, before the read-out follows again, px. */
const HELD_PX = 380;

const placeOf = ({ lng, lat }: LngLat): LonLat => [lng, lat];

const reachM = (map: MapLibre, touch: boolean): number =>
  metresPerPixel(map.getCenter().lat, map.getZoom()) * (touch ? REACH_PX.touch : REACH_PX.mouse);

/** Mouse and touch on the map: the read-out follows, presses choose or draw, what is chosen can be dragged. */
export function usePointer(map: MapLibre | null): void {
  useEffect(() => {
    if (!map) return;
    const stops = [followPointer(map), pressing(map), dragging(map)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [map]);
}

function followPointer(map: MapLibre): () => void {
  let waiting = 0;
  let latest: LonLat | null = null;
  const take = () => {
    waiting = 0;
    if (!latest || isHeld(map, latest)) return;
    handStore.setState({ mousePlace: latest });
    takeSketchStep({ do: 'move', to: latest });
    appStore.getState().setPointer(latest);
  };
  // After a tap the browser plays a mouse's part too; a finger has no pointer to follow.
  let touchedMs = Number.NEGATIVE_INFINITY;
  const touched = () => {
    touchedMs = performance.now();
  };
  const moved = (event: MapMouseEvent) => {
    if (performance.now() - touchedMs < AFTER_TOUCH_MS) return;
    latest = placeOf(event.lngLat);
    if (!waiting) waiting = requestAnimationFrame(take);
  };
  const left = () => {
    latest = null;
    const app = appStore.getState();
    if (app.pointer === handStore.getState().mousePlace) app.setPointer(null);
  };
  map.on('mousemove', moved);
  map.on('mouseout', left);
  map.on('touchstart', touched);
  map.on('touchend', touched);
  return () => {
    cancelAnimationFrame(waiting);
    map.off('touchstart', touched);
    map.off('touchend', touched);
    map.off('mousemove', moved);
    map.off('mouseout', left);
  };
}

/** Whether a press still holds the read-out where it was: the mouse may be on its way to it. */
function isHeld(map: MapLibre, mouse: LonLat): boolean {
  const { hand, pointer } = appStore.getState();
  const { heldPlace } = handStore.getState();
  if (heldPlace === null || pointer !== heldPlace || hand.doing !== 'looking') return false;
  const from = map.project([heldPlace[0], heldPlace[1]]);
  const to = map.project([mouse[0], mouse[1]]);
  return Math.hypot(to.x - from.x, to.y - from.y) < HELD_PX;
}

function pressing(map: MapLibre): () => void {
  const pressed = (event: MapMouseEvent) => {
    const touch = (event.originalEvent as PointerEvent).pointerType === 'touch';
    const app = appStore.getState();
    const place = placeOf(event.lngLat);
    app.setPointer(place);
    if (!touch)
      handStore.setState(app.hand.doing === 'looking' ? { heldPlace: place } : { mousePlace: place });
    switch (app.hand.doing) {
      case 'drawing':
        takeSketchStep({ do: 'move', to: place });
        takeSketchStep({ do: 'place', reachM: reachM(map, touch) });
        break;
      case 'pointing':
        app.pointGiven(place);
        break;
      case 'looking':
        choose(pickAt(app, place, reachM(map, touch)));
        break;
      case 'moving': {
        // A press beside the thing in hand lays it down where it is.
        if (pickAt(app, place, reachM(map, touch)) !== app.hand.id) layDown();
        break;
      }
    }
  };
  map.on('click', pressed);
  return () => {
    map.off('click', pressed);
  };
}

/**
 * Whether a press here takes hold of the chosen thing. Trees and other points can be dragged as soon as they are
 * chosen; what covers ground only when moving has been asked for, or a map could not be moved by a field.
 */
function heldAt(map: MapLibre, point: { x: number; y: number }, touch: boolean) {
  const app = appStore.getState();
  const { hand, selection } = app;
  const id = hand.doing === 'moving' ? hand.id : hand.doing === 'looking' ? selection : null;
  const feature = featureOf(id);
  if (!feature || (hand.doing === 'looking' && feature.geometry.type !== 'Point')) return null;
  const place = placeOf(map.unproject([point.x, point.y] as PointLike));
  const only = { ...app, document: { ...app.document, features: [feature] } };
  return pickAt(only, place, reachM(map, touch)) === feature.id ? { feature, place } : null;
}

function dragging(map: MapLibre): () => void {
  const start = (event: MapMouseEvent | MapTouchEvent) => {
    const touch = event.type === 'touchstart';
    if (touch && (event as MapTouchEvent).points.length !== 1) return;
    if (!touch && (event.originalEvent as MouseEvent).button !== 0) return;
    const held = heldAt(map, event.point, touch);
    if (!held) return;
    event.preventDefault();
    follow(event.point, held.feature.id, held.place, touch);
  };

  const follow = (
    from: { x: number; y: number },
    id: NonNullable<ReturnType<typeof featureOf>>['id'],
    grip: LonLat,
    touch: boolean,
  ) => {
    let dragged = false;
    const over = (event: MapMouseEvent | MapTouchEvent) => {
      if (!dragged && Math.hypot(event.point.x - from.x, event.point.y - from.y) < STILL_PX) return;
      dragged = true;
      const to = placeOf(event.lngLat);
      appStore.getState().preview((document) => moveFeatureTo(document, id, to, grip));
    };
    const end = () => {
      map.off(touch ? 'touchmove' : 'mousemove', over);
      window.removeEventListener(touch ? 'touchend' : 'mouseup', end);
      window.removeEventListener('touchcancel', end);
      const feature = featureOf(id);
      const app = appStore.getState();
      if (!dragged || !feature) return;
      app.commitGesture(`Move ${calledIn(feature)}`);
      if (app.hand.doing === 'moving') app.takeHand({ doing: 'looking' });
    };
    map.on(touch ? 'touchmove' : 'mousemove', over);
    window.addEventListener(touch ? 'touchend' : 'mouseup', end);
    window.addEventListener('touchcancel', end);
  };

  map.on('mousedown', start);
  map.on('touchstart', start);
  return () => {
    map.off('mousedown', start);
    map.off('touchstart', start);
  };
}
