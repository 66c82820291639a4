import { useApp } from '../../state/store.ts';

/** What the point that is given on the map is for. */
export const WIND_PURPOSE = 'wind-here';

/** Asks for a spot on the map, whose wind is then looked at. */
export function AskWind() {
  const takeHand = useApp((app) => app.takeHand);
  const show = useApp((app) => app.show);
  const hasGround = useApp((app) => app.ground !== null);
  return (
    <div className="buttons">
      <button
        type="button"
        disabled={!hasGround}
        onClick={() => {
          takeHand({ doing: 'pointing', purpose: WIND_PURPOSE, pointsWanted: 1 });
          // On a narrow screen the panel lies over the map.
          if (matchMedia('(max-width: 1100px)').matches) show({ panelOpen: false });
        }}
      >
        Wind from a spot
      </button>
    </div>
  );
}
