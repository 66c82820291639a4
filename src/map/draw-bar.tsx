import { REGISTRY } from '../site/records/registry.ts';
import type { Hand } from '../state/model.ts';
import { useApp } from '../state/store.ts';
import {
  abandon,
  calledIn,
  featureOf,
  layDown,
  leaveDrawing,
  takeSketchStep,
} from './drawing/hand-actions.ts';
import { useHandState } from './drawing/hand-store.ts';
import './bar.css';

const kindWord = (kind: Extract<Hand, { doing: 'drawing' }>['kind']): string =>
  kind === 'row' ? 'row of trees' : REGISTRY[kind].label.toLowerCase();

/** What the hand is doing, how to go on, and how to end it: for a finger as much as for a mouse. */
export function DrawBar() {
  const hand = useApp((app) => app.hand);
  switch (hand.doing) {
    case 'looking':
      return null;
    case 'drawing':
      return <Drawing hand={hand} />;
    case 'moving':
    case 'reshaping':
      return <Holding hand={hand} />;
    case 'pointing':
      return <Pointing hand={hand} />;
  }
}

function Drawing({ hand }: { readonly hand: Extract<Hand, { doing: 'drawing' }> }) {
  const placed = useHandState((state) => state.sketch?.corners.length ?? 0);
  const fewest = hand.geometry === 'Polygon' ? 3 : 2;
  const word = kindWord(hand.kind);
  const how =
    hand.geometry === 'Point'
      ? 'Press where it stands.'
      : placed === 0
        ? hand.geometry === 'Polygon'
          ? 'Press its corners one after another.'
          : 'Press its points one after another.'
        : placed < fewest
          ? `${fewest - placed} more to go.`
          : `Press the ${hand.geometry === 'Polygon' ? 'first' : 'last'} point again to finish.`;
  return (
    <div className="map-bar" data-testid="draw-bar">
      <p>
        <b>{word[0].toUpperCase() + word.slice(1)}.</b> {how}
      </p>
      {hand.geometry !== 'Point' && placed > 0 && (
        <button type="button" onClick={() => takeSketchStep({ do: 'take-back' })}>
          Take back
        </button>
      )}
      {hand.geometry !== 'Point' && placed >= fewest && (
        <button
          type="button"
          className="main"
          onClick={() => takeSketchStep({ do: 'finish' })}
          data-testid="draw-finish"
        >
          Finish
        </button>
      )}
      <button type="button" onClick={leaveDrawing}>
        {hand.geometry === 'Point' ? 'Done' : 'Leave it'}
      </button>
    </div>
  );
}

function Holding({ hand }: { readonly hand: Extract<Hand, { doing: 'moving' | 'reshaping' }> }) {
  const feature = featureOf(hand.id);
  const what = feature ? calledIn(feature) : '';
  return (
    <div className="map-bar" data-testid="draw-bar">
      <p>
        <b>{hand.doing === 'moving' ? `Moving ${what}.` : `Reshaping ${what}.`}</b>{' '}
        {hand.doing === 'moving'
          ? 'Drag it, or use the arrow keys.'
          : 'Drag its points; a small dot on a side adds one.'}
      </p>
      <button type="button" className="main" onClick={layDown} data-testid="hand-done">
        Done
      </button>
      <button type="button" onClick={abandon}>
        As it was
      </button>
    </div>
  );
}

function Pointing({ hand }: { readonly hand: Extract<Hand, { doing: 'pointing' }> }) {
  const given = useApp((app) => app.pointed?.points.length ?? 0);
  const left = hand.pointsWanted - given;
  return (
    <div className="map-bar" data-testid="draw-bar">
      <p>
        <b>{left === 1 ? 'Press one place on the map.' : `Press ${left} places on the map.`}</b>
      </p>
      <button type="button" onClick={abandon}>
        Leave it
      </button>
    </div>
  );
}
