import { felledWords } from '../state/belts-found.ts';
import { useApp } from '../state/store.ts';
import './bar.css';

/** Says on the map that something is shown as if it were felled, and leads back. */
export function FelledBanner() {
  const words = useApp(felledWords);
  const show = useApp((app) => app.show);
  if (words === null) return null;
  return (
    <div className="map-bar map-felled" data-testid="felled" role="status">
      <p>
        <b>Only supposed:</b> {words}.
      </p>
      <button type="button" onClick={() => show({ felled: null })}>
        As it stands
      </button>
    </div>
  );
}
