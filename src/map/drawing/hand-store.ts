import { createStore, useStore } from 'zustand';
import type { LonLat } from '../../geo/frame.ts';
import type { Sketch } from './sketch.ts';

/** What the drawing hand holds between two events; nothing here belongs to the site. */
export interface HandState {
  readonly sketch: Sketch | null;
  /** The place the mouse gave last; a pointer elsewhere in the app's state came from keys, touch or a panel. */
  readonly mousePlace: LonLat | null;
  /** A place a press has held, so that the read-out stays and can be reached with the mouse; null: it follows. */
  readonly heldPlace: LonLat | null;
  /** How far the feature in hand has been moved so far, metres to the true east and north. */
  readonly moved: { readonly eastM: number; readonly northM: number };
  /** The corner the keys move while reshaping. */
  readonly corner: number;
  /** Said to a person who cannot see the map. */
  readonly spoken: string;
}

export const handStore = createStore<HandState>()(() => ({
  sketch: null,
  mousePlace: null,
  heldPlace: null,
  moved: { eastM: 0, northM: 0 },
  corner: 0,
  spoken: '',
}));

export const useHandState = <Part>(selector: (hand: HandState) => Part): Part =>
  useStore(handStore, selector);
