import type { StoreApi } from 'zustand/vanilla';
import type { Actions, App, AppState } from './model.ts';

export const FIRST_HAND: Pick<AppState, 'hand' | 'pointer' | 'pointed'> = {
  hand: { doing: 'looking' },
  pointer: null,
  pointed: null,
};

/** What the hand does on the map, and the points it gives to whoever asked. */
export function handActions(
  set: StoreApi<App>['setState'],
  get: StoreApi<App>['getState'],
): Pick<Actions, 'takeHand' | 'pointGiven' | 'setPointer'> {
  return {
    takeHand: (hand) =>
      set(
        hand.doing === 'pointing'
          ? { hand, pointed: { purpose: hand.purpose, points: [], complete: false } }
          : { hand, ...(hand.doing === 'looking' ? { pointed: null } : {}) },
      ),
    pointGiven: (lonLat) => {
      const { hand, pointed } = get();
      if (hand.doing !== 'pointing') return;
      const points = [...(pointed?.purpose === hand.purpose ? pointed.points : []), lonLat];
      const complete = points.length >= hand.pointsWanted;
      set({
        pointed: { purpose: hand.purpose, points, complete },
        hand: complete ? { doing: 'looking' } : hand,
      });
    },
    setPointer: (pointer) => set({ pointer }),
  };
}
