import { useId } from 'react';
import { supposedInWords } from '../state/end-words.ts';
import { type EndChoice, endChoices, mostInWords } from '../state/most-in-words.ts';
import { useApp } from '../state/store.ts';
import { causesOfMap, endsOfMap } from '../state/what-would-change.ts';
import './end-switch.css';

/** What would change the map most, with its size, and the switch that draws the map at each end. */
export function EndSwitch() {
  const id = useId();
  const most = useApp(mostInWords);
  const shownEnd = useApp((app) => app.shownEnd);
  const show = useApp((app) => app.show);
  const picture = useApp((app) => app.picture);
  const ends = useApp(endsOfMap);
  const choices = endChoices(picture, useApp(causesOfMap));
  if (choices.length === 0 && most === null) return null;
  const waiting = choices.length > 0 && ends.status === 'computing';
  return (
    <div className="map-ends">
      <p>
        <b>What would change it most.</b> {most ?? (waiting ? 'Being worked out.' : 'Not worked out yet.')}
        {most && ends.stale && choices.length > 0 ? (
          <span className="map-legend-stale"> From before your last change.</span>
        ) : null}
      </p>
      {choices.length > 0 && (
        <>
          <label htmlFor={id}>Draw it with</label>
          <select
            id={id}
            value={shownEnd ?? EXPECTED}
            onChange={({ target }) =>
              show({ shownEnd: target.value === EXPECTED ? null : (target.value as EndChoice['end']) })
            }
          >
            <option value={EXPECTED}>what is expected</option>
            {shownEnd && !choices.some(({ end }) => end === shownEnd) ? (
              <option value={shownEnd}>{supposedInWords(shownEnd)}</option>
            ) : null}
            {choices.map(({ end, words }) => (
              <option key={end} value={end}>
                {words}
              </option>
            ))}
          </select>
        </>
      )}
    </div>
  );
}
const EXPECTED = 'expected';

/** Says that what is drawn is not what is expected, and leads back. */
export function Supposed() {
  const shownEnd = useApp((app) => app.shownEnd);
  const show = useApp((app) => app.show);
  if (shownEnd === null) return null;
  return (
    <div className="map-supposed" data-testid="supposed">
      <span>
        Drawn with <b>{supposedInWords(shownEnd)}</b>
      </span>
      <button type="button" onClick={() => show({ shownEnd: null })}>
        As expected
      </button>
    </div>
  );
}
