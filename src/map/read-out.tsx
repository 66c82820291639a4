import type { Map as MapLibre } from 'maplibre-gl';
import { useSyncExternalStore } from 'react';
import type { LonLat } from '../geo/frame.ts';
import { readOutAt } from '../state/read-out.ts';
import { appStore, useApp } from '../state/store.ts';
import { lookAroundAt, windAtPlace } from './drawing/hand-actions.ts';
import { useHandState } from './drawing/hand-store.ts';
import { measureRows, moveWords } from './drawing/measure-words.ts';
import { sketchMeasures } from './drawing/sketch.ts';
import { cardPlace } from './read-out-place.ts';
import { useProjected } from './use-projected.ts';
import './read-out.css';

const NARROW = '(max-width: 700px)';
const subscribeNarrow = (changed: () => void) => {
  const query = matchMedia(NARROW);
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
};

type Row = { readonly label: string; readonly value: string };

/** Measures of what is being drawn or moved; empty while nothing is. */
export function useHandRows(): readonly Row[] {
  const units = useApp((app) => app.unitSystem);
  const moving = useApp((app) => app.hand.doing === 'moving');
  const sketch = useHandState((hand) => hand.sketch);
  const moved = useHandState((hand) => hand.moved);
  if (sketch) return measureRows(sketchMeasures(sketch), units);
  if (moving) return [{ label: 'Moved', value: moveWords(moved.eastM, moved.northM, units) }];
  return [];
}

/** What is known of the place under the pointer or the cross, beside it; on a phone at the top. */
export function ReadOut({ map }: { readonly map: MapLibre | null }) {
  const pointer = useApp((app) => app.pointer);
  const narrow = useSyncExternalStore(subscribeNarrow, () => matchMedia(NARROW).matches);
  const at = useProjected(map, narrow ? null : pointer);
  const handRows = useHandRows();
  // A read-out that follows the mouse cannot be pressed; one that stays beside a place can.
  const stays = useHandState((hand) => pointer !== hand.mousePlace);
  const looking = useApp((app) => app.hand.doing === 'looking' && app.ground !== null);
  if (!pointer || (!narrow && !at)) return null;
  return (
    <div
      className={narrow ? 'map-read map-read-fixed' : 'map-read'}
      style={at ? cardPlace(at) : undefined}
      data-testid="read-out"
    >
      {handRows.length > 0 && <Rows rows={handRows} />}
      {/* On a phone there is room for one of the two. */}
      {(!narrow || handRows.length === 0) && <Known place={pointer} quiet={handRows.length > 0} />}
      {(narrow || stays) && looking && (
        <div className="map-read-ask">
          <button type="button" onClick={() => lookAroundAt(pointer)}>
            Horizon from here
          </button>
          <button type="button" onClick={() => windAtPlace(pointer)}>
            Wind from here
          </button>
        </div>
      )}
      {narrow && (
        <button
          type="button"
          className="bare map-read-away"
          onClick={putAway}
          aria-label="Put the read-out away"
        >
          ×
        </button>
      )}
    </div>
  );
}

const putAway = () => appStore.getState().setPointer(null);

/** Everything the read-out depends on, so that it is worked out anew when an answer arrives. */
function Known({ place, quiet }: { readonly place: LonLat; readonly quiet: boolean }) {
  useApp((app) => app.light);
  useApp((app) => app.shelter);
  useApp((app) => app.sunTimes);
  useApp((app) => app.picture);
  useApp((app) => app.ground);
  useApp((app) => app.document);
  useApp((app) => app.period);
  useApp((app) => app.year);
  useApp((app) => app.unitSystem);
  const known = readOutAt(appStore.getState(), place);
  if (!known) return null;
  return (
    <>
      <b className={quiet ? 'map-read-quiet' : undefined}>{known.title}</b>
      <Rows rows={known.rows} />
    </>
  );
}

function Rows({ rows }: { readonly rows: readonly Row[] }) {
  return (
    <dl>
      {rows.map(({ label, value }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
