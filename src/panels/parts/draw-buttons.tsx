import type { Hand } from '../../state/model.ts';
import { useApp } from '../../state/store.ts';
import { uncoverMap } from './uncover-map.ts';

type Drawing = Extract<Hand, { doing: 'drawing' }>;
export interface Drawable {
  readonly label: string;
  readonly kind: Drawing['kind'];
  readonly geometry: Drawing['geometry'];
}

/** Draw, in words. The chosen one stays pressed until the shape is done or it is pressed again. */
export function DrawButtons(props: { items: readonly Drawable[] }) {
  const hand = useApp((app) => app.hand);
  const takeHand = useApp((app) => app.takeHand);
  return (
    <div className="buttons draw">
      {props.items.map((item) => {
        const drawing =
          hand.doing === 'drawing' && hand.kind === item.kind && hand.geometry === item.geometry;
        return (
          <button
            key={`${item.kind} ${item.geometry}`}
            type="button"
            aria-pressed={drawing}
            onClick={() => {
              if (drawing) return takeHand({ doing: 'looking' });
              takeHand({ doing: 'drawing', kind: item.kind, geometry: item.geometry });
              uncoverMap();
            }}
          >
            {item.label}
          </button>
        );
      })}
    </div>
  );
}
