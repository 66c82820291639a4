import { useState } from 'react';
import type { WindSpotsView } from '../../state/model.ts';
import { useApp } from '../../state/store.ts';
import type { WindSpotsAnswer } from '../../state/wind-spots.ts';
import { READABLE_WINDS, readableForce } from '../../windspots/readable-winds.ts';
import { AskSpot } from '../parts/ask-spot.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { TextField } from '../parts/text-field.tsx';
import { TapeFrom } from '../stakes/tape-from.tsx';
import { parseHeights } from './parse-heights.ts';

/** Which wind, which day, which spots, and what is taped from. */
export function SpotsChoices(props: { answer: WindSpotsAnswer }) {
  const { plan, points } = props.answer;
  const spots = useApp((app) => app.windSpots);
  const show = useApp((app) => app.show);
  const [wrongHeights, setWrongHeights] = useState(false);
  if (!spots) return null;
  const { wind } = spots;
  const ask = (part: Partial<WindSpotsView>) => show({ windSpots: { ...spots, ...part } });
  const takeHeights = (text: string) => {
    const heights = parseHeights(text);
    setWrongHeights(heights === null);
    if (heights) ask({ heights });
  };
  const force = readableForce(wind.speedMps);
  return (
    <div className="section wide-gap">
      <NumberField
        label="Wind from"
        value={wind.fromDeg}
        unit="° from true north"
        digits={0}
        min={0}
        max={360}
        hint="0 north, 90 east, 180 south, 270 west"
        onChange={(fromDeg) => ask({ wind: { ...wind, fromDeg } })}
      />
      <SelectField
        label="How strong"
        value={String(force)}
        options={READABLE_WINDS.map(({ force: each, words }) => ({ value: String(each), label: words }))}
        hint={READABLE_WINDS.find((each) => each.force === force)?.sign}
        onChange={(value) => {
          const speedMps = READABLE_WINDS.find((each) => String(each.force) === value)?.speedMps;
          if (speedMps !== undefined) ask({ wind: { ...wind, speedMps } });
        }}
      />
      <TextField
        label="Day"
        type="date"
        value={spots.date}
        onChange={(date) => {
          if (date !== '') ask({ date });
        }}
      />
      <div>
        <TextField
          label="Spots behind it, in its heights"
          value={spots.heights.join(', ')}
          hint="such as 2, 5, 10, 15; empty: only places chosen on the map"
          onChange={takeHeights}
        />
        {wrongHeights ? <p className="field-wrong">Type numbers above 0, such as 2, 5, 10.</p> : null}
      </div>
      <div className="buttons">
        <AskSpot purpose="windSpot">A spot on the map</AskSpot>
        {spots.places.length > 0 ? (
          <button type="button" onClick={() => ask({ places: [] })}>
            {spots.places.length === 1
              ? 'Without the chosen place'
              : `Without the ${spots.places.length} chosen places`}
          </button>
        ) : null}
      </div>
      <TapeFrom
        points={points}
        line={plan ? [plan.line.a.letter, plan.line.b.letter] : spots.line}
        chosen={spots.line !== null}
        onChange={(line) => ask({ line })}
      >
        <LengthField
          label="The line across begins so far along it"
          valueM={spots.alongM}
          minM={0}
          maxM={plan?.belt.lineM}
          hint="from its first point; empty: its middle"
          onChange={(alongM) => ask({ alongM })}
          onClear={() => ask({ alongM: null })}
        />
      </TapeFrom>
    </div>
  );
}
