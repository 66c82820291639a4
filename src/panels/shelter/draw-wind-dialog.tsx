import { useId, useRef, useState } from 'react';
import { speedFrom, speedIn, speedUnit } from '../../state/format-measure.ts';
import { pullWind, type RoseSeason, roseOf, setCalms, windOfSite } from '../../state/site-wind.ts';
import { useApp } from '../../state/store.ts';
import { beaufortName } from '../../state/wind-in-words.ts';
import { fineDirectionWord } from '../../units/compass.ts';
import { Choice } from '../parts/choice.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { HandRose, type HandScale } from './hand-rose.tsx';

const SEASONS = [
  { value: 'year', label: 'Whole year' },
  { value: 'growing', label: 'Growing season' },
  { value: 'rest', label: 'Rest of the year' },
] as const;
/** The mean wind of a direction is never drawn stiller than this, m/s. */
const LEAST_MEAN_MPS = 0.5;

/** The wind drawn by hand: one rose for how often, one for how strong, pulled longer or shorter; seasons apart. */
export function DrawWindDialog() {
  const helpId = useId();
  const answer = useApp(windOfSite);
  const app = useApp((state) => state);
  const [season, setSeason] = useState<RoseSeason>('year');
  const [point, setPoint] = useState(10);
  // Rings stay where they are while a petal is being pulled.
  const frozen = useRef<{ often: HandScale; strong: HandScale } | null>(null);
  const close = () => app.show({ dialog: null });
  if ('wrong' in answer)
    return (
      <Dialog title="Draw the wind" onClose={close}>
        <p className="warn">{answer.wrong}</p>
      </Dialog>
    );
  const { unitSystem: units, weather } = app;
  const { sectors, calmShare } = roseOf(answer.wind, season);
  const scales = frozen.current ?? {
    often: oftenScale(Math.max(...sectors.map(({ frequency }) => frequency))),
    strong: strongScale(Math.max(...sectors.map(({ meanSpeedMps }) => speedIn(meanSpeedMps, units))), units),
  };
  const names = sectors.map(({ fromDeg }) => fineDirectionWord(fromDeg));
  const often = sectors.map(({ frequency }) => Math.round(frequency * 1000) / 10);
  const strong = sectors.map(({ meanSpeedMps }) => Math.round(speedIn(meanSpeedMps, units) * 10) / 10);
  const unit = speedUnit(units);
  const pull = (at: number, part: { share: number } | { meanSpeedMps: number }) => {
    frozen.current = scales;
    app.preview((document) => pullWind(document, weather, season, { point: at, ...part }));
  };
  const pullSpeed = (at: number, speed: number) =>
    pull(at, { meanSpeedMps: Math.max(LEAST_MEAN_MPS, speedFrom(speed, units)) });
  const done = (at: number) => {
    frozen.current = null;
    app.commitGesture(`Pull the wind from the ${names[at]}`);
  };
  return (
    <Dialog
      title="Draw the wind"
      broad
      onClose={close}
      footer={
        <>
          <button type="button" disabled={app.undoLabel === null} onClick={() => app.undo()}>
            Undo
            {app.undoLabel === null ? null : <span className="undo-what"> {inSentence(app.undoLabel)}</span>}
          </button>
          <button type="button" className="main" onClick={close}>
            Done
          </button>
        </>
      }
    >
      <p className="soft" id={helpId}>
        Pull a direction longer or shorter, with the finger, the mouse, or the keys up and down; left and
        right go round the compass. Petals point to where the wind comes from.
      </p>
      <Choice label="Season" hideLabel value={season} options={SEASONS} onChange={setSeason} />
      <div className="hand-roses">
        <HandRose
          legend={
            <>
              <b>How often</b>, % of the hours
            </>
          }
          broad
          petals={sectors.map((_, i) => ({
            name: names[i],
            value: often[i],
            spoken: `${often[i]} % of the hours`,
          }))}
          scale={scales.often}
          current={point}
          describedBy={helpId}
          onCurrent={setPoint}
          onPull={(at, percent) => pull(at, { share: percent / 100 })}
          onDone={done}
        />
        <HandRose
          legend={
            <>
              <b>How strong</b>, mean {unit} at 10 m
            </>
          }
          broad={false}
          petals={sectors.map(({ meanSpeedMps }, i) => ({
            name: names[i],
            value: strong[i],
            spoken: `${strong[i]} ${unit}, ${beaufortName(meanSpeedMps)}`,
          }))}
          scale={scales.strong}
          current={point}
          describedBy={helpId}
          onCurrent={setPoint}
          onPull={pullSpeed}
          onDone={done}
        />
      </div>
      <div className="hand-figures">
        <NumberField
          label={`Hours from the ${names[point]}`}
          unit="%"
          value={often[point]}
          digits={1}
          min={0}
          max={95}
          onChange={(percent) => {
            pull(point, { share: percent / 100 });
            done(point);
          }}
        />
        <NumberField
          label={`Mean from the ${names[point]}`}
          unit={unit}
          value={strong[point]}
          digits={1}
          min={0}
          max={Math.round(speedIn(30, units))}
          hint={beaufortName(sectors[point].meanSpeedMps)}
          onChange={(speed) => {
            pullSpeed(point, speed);
            done(point);
          }}
        />
        <NumberField
          label="Calm hours"
          unit="%"
          value={calmShare * 100}
          digits={1}
          min={0}
          max={90}
          onChange={(percent) =>
            app.edit('Set the calms', (document) => setCalms(document, weather, season, percent / 100))
          }
        />
      </div>
    </Dialog>
  );
}

const inSentence = (label: string): string => label[0].toLowerCase() + label.slice(1);

/** Rings in percent, with room beyond the longest petal to pull it to. */
function oftenScale(most: number): HandScale {
  const ring = most > 0.4 ? 20 : most > 0.2 ? 10 : 5;
  return scaleOf(most * 100, ring, 1, 0, (value) => `${value} %`);
}

function strongScale(most: number, units: 'metric' | 'imperial'): HandScale {
  const ring = units === 'metric' ? (most > 8 ? 4 : 2) : most > 18 ? 8 : 4;
  return scaleOf(most, ring, units === 'metric' ? 0.2 : 0.5, units === 'metric' ? 0.6 : 1.5, String);
}

function scaleOf(
  most: number,
  ring: number,
  step: number,
  least: number,
  words: (value: number) => string,
): HandScale {
  const count = Math.max(2, Math.ceil((most * 1.25) / ring));
  const rings = Array.from({ length: count }, (_, i) => (i + 1) * ring);
  return { rings: rings.map((value) => ({ value, words: words(value) })), step, least };
}
