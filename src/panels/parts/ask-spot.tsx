import { useApp } from '../../state/store.ts';
import { uncoverMap } from './uncover-map.ts';

/** What the one point that is given on the map is for. */
export const SPOT_PURPOSE = { horizon: 'horizon', wind: 'wind-here', windSpot: 'wind-spot' } as const;

/** Asks for a spot on the map. */
export function AskSpot(props: { purpose: keyof typeof SPOT_PURPOSE; children: string }) {
  const takeHand = useApp((app) => app.takeHand);
  const hasGround = useApp((app) => app.ground !== null);
  return (
    <button
      type="button"
      disabled={!hasGround}
      onClick={() => {
        takeHand({ doing: 'pointing', purpose: SPOT_PURPOSE[props.purpose], pointsWanted: 1 });
        uncoverMap();
      }}
    >
      {props.children}
    </button>
  );
}
