import { useState } from 'react';
import { formatLength } from '../../state/format-measure.ts';
import { takeReadHeight } from '../../state/growth-here.ts';
import { heightByAngle, heightByShadow, heightByStick } from '../../state/measure-tree.ts';
import { appStore, useApp } from '../../state/store.ts';
import { BadInputError } from '../../units/bad-input.ts';
import { fineDirectionWord } from '../../units/compass.ts';
import { Choice } from '../parts/choice.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { TextField } from '../parts/text-field.tsx';

type Way = 'shadow' | 'angle' | 'stick' | 'rod';
/** As it is kept with the reading. */
const METHODS: Record<Way, string> = {
  shadow: 'by its shadow',
  angle: 'by an angle',
  stick: 'by a stick',
  rod: 'by a rod',
};
const NOTHING = '';
const GROWS = ['tree', 'belt', 'block'];

/** A tree's height without climbing it: from its shadow, an angle, a stick, or for a low one a rod. */
export function TreeHeightDialog() {
  const show = useApp((app) => app.show);
  const units = useApp((app) => app.unitSystem);
  const centre = useApp((app) => app.centre);
  const timeZone = useApp((app) => app.document.site.timeZone);
  const selection = useApp((app) => app.selection);
  const things = useApp((app) => app.grown.things);
  const growing = things.filter(({ kind }) => GROWS.includes(kind));
  const [whose, setWhose] = useState(selection === null ? NOTHING : String(selection));
  const [way, setWay] = useState<Way>('shadow');
  const [lengthM, setLengthM] = useState(12);
  const [eyeM, setEyeM] = useState(1.6);
  const [topDeg, setTopDeg] = useState(40);
  const [footDeg, setFootDeg] = useState<number | null>(null);
  const [stickM, setStickM] = useState(0.3);
  const [reachM, setReachM] = useState(0.6);
  const [date, setDate] = useState(() => new Date().toISOString().slice(0, 10));
  const [time, setTime] = useState('12:00');
  const [riseDeg, setRiseDeg] = useState(0);
  const close = () => show({ dialog: null });

  let heightM: number | null = null;
  let said: string | null = null;
  try {
    if (date === '') throw new BadInputError('The day is missing: expected the day it was measured.');
    if (way === 'angle') heightM = heightByAngle({ distanceM: lengthM, eyeHeightM: eyeM, topDeg, footDeg });
    else if (way === 'rod') heightM = lengthM;
    else if (way === 'stick') heightM = heightByStick({ distanceM: lengthM, stickM, eyeToStickM: reachM });
    else {
      const shadow = heightByShadow({
        shadowM: lengthM,
        date,
        time,
        timeZone,
        lonLat: centre,
        riseDeg,
      });
      heightM = shadow.heightM;
      said = `The sun stood ${shadow.sunAltitudeDeg.toFixed(1)}° high in the ${fineDirectionWord(shadow.sunAzimuthDeg)}.`;
    }
  } catch (reason) {
    said = (reason as Error).message;
  }
  const takes = growing.find(({ id }) => String(id) === whose) ?? null;
  const give = () => {
    if (!takes || heightM === null) return;
    takeReadHeight(appStore.getState(), takes.id, { heightM, date, method: METHODS[way] });
    close();
  };
  return (
    <Dialog
      title="How tall is a tree?"
      onClose={close}
      footer={
        takes ? (
          <button type="button" className="main" disabled={heightM === null} onClick={give}>
            Give it this height
          </button>
        ) : null
      }
    >
      <Choice
        label="Measured by"
        value={way}
        options={[
          { value: 'shadow', label: 'its shadow' },
          { value: 'angle', label: 'an angle' },
          { value: 'stick', label: 'a stick' },
          { value: 'rod', label: 'a rod' },
        ]}
        onChange={setWay}
      />
      <div className="pair">
        <TextField label="Day" type="date" value={date} onChange={setDate} />
        {way === 'shadow' ? (
          <TextField label="Clock time there" type="time" value={time} onChange={setTime} />
        ) : null}
      </div>
      {way === 'shadow' ? (
        <>
          <LengthField
            label="Shadow, from stem to tip"
            valueM={lengthM}
            minM={0.1}
            maxM={500}
            onChange={setLengthM}
          />
          <NumberField
            label="The ground rises along the shadow by"
            value={riseDeg}
            unit="°"
            min={-40}
            max={40}
            hint="below zero where it falls"
            onChange={setRiseDeg}
          />
        </>
      ) : null}
      {way === 'angle' ? (
        <>
          <div className="pair">
            <LengthField
              label="You stand from it"
              valueM={lengthM}
              minM={0.5}
              maxM={500}
              onChange={setLengthM}
            />
            <LengthField label="Your eye is up" valueM={eyeM} minM={0.2} maxM={5} onChange={setEyeM} />
          </div>
          <div className="pair">
            <NumberField
              label="Angle up to the top"
              value={topDeg}
              unit="°"
              min={-80}
              max={89}
              onChange={setTopDeg}
            />
            <NumberField
              label="Angle to the foot"
              value={footDeg}
              unit="°"
              min={-80}
              max={80}
              hint="below zero when it lies lower; empty on level ground"
              onChange={setFootDeg}
              onClear={() => setFootDeg(null)}
            />
          </div>
        </>
      ) : null}
      {way === 'stick' ? (
        <>
          <p className="soft">
            Hold a stick upright at arm’s length and walk until it just covers the tree from foot to top.
          </p>
          <LengthField
            label="You stand from it"
            valueM={lengthM}
            minM={0.5}
            maxM={500}
            onChange={setLengthM}
          />
          <div className="pair">
            <LengthField label="The stick is" valueM={stickM} minM={0.05} maxM={3} onChange={setStickM} />
            <LengthField label="From eye to stick" valueM={reachM} minM={0.1} maxM={2} onChange={setReachM} />
          </div>
        </>
      ) : null}
      {way === 'rod' ? (
        <LengthField
          label="Height, read on the rod"
          valueM={lengthM}
          minM={0.1}
          maxM={120}
          onChange={setLengthM}
        />
      ) : null}
      <div className={heightM === null ? 'answer dark' : 'answer'} aria-live="polite">
        <strong>{heightM === null ? '–' : formatLength(heightM, units)}</strong>
        <p>{heightM === null ? said : `tall. ${said ?? ''}`}</p>
      </div>
      <SelectField
        label="Whose height is it?"
        value={takes ? whose : NOTHING}
        options={[
          { value: NOTHING, label: 'of none that is drawn' },
          ...growing.map(({ id, label }) => ({ value: String(id), label })),
        ]}
        hint="It is kept as a reading of that day; the plant grows on from its newest."
        onChange={setWhose}
      />
    </Dialog>
  );
}
