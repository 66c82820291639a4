import { useId, useState } from 'react';
import { declinationAt } from '../../geo/declination.ts';
import type { LonLat } from '../../geo/frame.ts';
import { polygonAreaM2 } from '../../geo/geodesic.ts';
import { placeFromText } from '../../geo/place-from-text.ts';
import { parseTraverse, type Traverse, traverseBoundary } from '../../geo/traverse.ts';
import { drawFinished } from '../../state/draw-finished.ts';
import { formatArea, formatLength } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { fineDirectionWord } from '../../units/compass.ts';
import { Choice } from '../parts/choice.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/text-field.tsx';
import { TraverseSketch } from './traverse-sketch.tsx';

/** A boundary as it was walked: sides and bearings, against true or magnetic north, with the misclosure shown. */
export function SidesDialog() {
  const id = useId();
  const show = useApp((app) => app.show);
  const units = useApp((app) => app.unitSystem);
  const centre = useApp((app) => app.document.site.placeLonLat ?? app.centre);
  const [text, setText] = useState('');
  const [north, setNorth] = useState<'magnetic' | 'true'>('magnetic');
  const [date, setDate] = useState(() => new Date().toISOString().slice(0, 10));
  const [adjust, setAdjust] = useState(true);
  const [startText, setStartText] = useState(`${centre[1].toFixed(5)}, ${centre[0].toFixed(5)}`);

  let traverse: Traverse | null = null;
  let wrong: string | null = null;
  let start: LonLat | null = null;
  try {
    start = placeFromText(startText);
    if (text.trim() !== '') {
      traverse = traverseBoundary({
        start,
        legs: parseTraverse(text),
        reference: north === 'true' ? { north } : { north, date: new Date(`${date}T12:00:00Z`) },
        adjust: adjust ? 'compass-rule' : 'none',
      });
    }
  } catch (reason) {
    wrong = (reason as Error).message;
  }
  const declination =
    start && north === 'magnetic' ? declinationAt(start, new Date(`${date}T12:00:00Z`)) : null;
  const close = () => show({ dialog: null });
  const take = () => {
    if (!traverse) return;
    drawFinished('field', { type: 'Polygon', coordinates: [traverse.ring] });
    close();
  };
  return (
    <Dialog
      title="A boundary by sides and bearings"
      onClose={close}
      footer={
        <button type="button" className="main" disabled={!traverse} onClick={take}>
          Make it a field
        </button>
      }
    >
      <div>
        <label className="field-label" htmlFor={`${id}-sides`}>
          Sides, one a line: length, then bearing
        </label>
        <textarea
          id={`${id}-sides`}
          rows={6}
          spellCheck={false}
          value={text}
          placeholder={'42.5 N35E\n61 m 118\n140 ft S10°30′W'}
          aria-describedby={`${id}-hint`}
          onChange={(event) => setText(event.target.value)}
        />
        <p id={`${id}-hint`} className={wrong ? 'field-wrong' : 'field-hint'} aria-live="polite">
          {wrong ??
            'Lengths in metres, or with ft, yd or ch. Bearings as 215, N35E or SSW, in the order you walked.'}
        </p>
      </div>
      <div className="pair">
        <Choice
          label="Bearings are from"
          value={north}
          options={[
            { value: 'magnetic', label: 'a compass' },
            { value: 'true', label: 'true north' },
          ]}
          onChange={setNorth}
        />
        {north === 'magnetic' ? (
          <TextField label="Read on" type="date" value={date} onChange={setDate} />
        ) : null}
      </div>
      {declination ? (
        <p className="small soft">
          The needle points {Math.abs(declination.declinationDeg).toFixed(1)}°{' '}
          {declination.declinationDeg < 0 ? 'west' : 'east'} of true north here on that day (
          {declination.model}).
        </p>
      ) : null}
      <TextField
        label="It starts at"
        value={startText}
        hint="latitude and longitude"
        onChange={setStartText}
      />
      <label className="tick">
        <input type="checkbox" checked={adjust} onChange={(event) => setAdjust(event.target.checked)} />
        Spread what does not close over the sides, by their lengths
      </label>
      {traverse ? (
        <div className="traverse" aria-live="polite">
          <TraverseSketch ring={traverse.ring} />
          <dl className="facts">
            <dt>Around it</dt>
            <dd>{formatLength(traverse.perimeterM, units)}</dd>
            <dt>Area</dt>
            <dd>{formatArea(polygonAreaM2([traverse.ring]), units)}</dd>
            <dt>Does not close by</dt>
            <dd>
              {traverse.misclosure.ratio === 'none'
                ? 'nothing'
                : `${formatLength(traverse.misclosure.lengthM, units)} to the ${fineDirectionWord(traverse.misclosure.bearingDeg)}, ${traverse.misclosure.ratio}`}
            </dd>
          </dl>
        </div>
      ) : null}
    </Dialog>
  );
}
