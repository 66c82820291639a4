import { useState } from 'react';
import { speedFrom, speedIn, speedUnit } from '../../state/format-measure.ts';
import { appStore, useApp } from '../../state/store.ts';
import { keepWindReading } from '../../state/wind-spots.ts';
import type { KeptSpot } from '../../windspots/kept-spots.ts';
import { METER_MINUTES } from '../../windspots/spot-plan.ts';
import { NumberField } from '../parts/number-field.tsx';
import { TextField } from '../parts/text-field.tsx';
import { KeptForm } from '../stakes/kept-form.tsx';

const MOST_MPS = 40;

/** What two meters showed at one spot. */
export function MetersForm(props: { kept: KeptSpot; onDone: () => void }) {
  const { kept, onDone } = props;
  const units = useApp((app) => app.unitSystem);
  const [openMps, setOpenMps] = useState<number | null>(null);
  const [spotMps, setSpotMps] = useState<number | null>(null);
  const [date, setDate] = useState(kept.expected.date);
  const [time, setTime] = useState('');
  const [minutes, setMinutes] = useState(METER_MINUTES);
  const [fromDeg, setFromDeg] = useState(kept.expected.windFromDeg);
  const [missing, setMissing] = useState(false);
  const keep = () => {
    if (openMps === null || spotMps === null) return setMissing(true);
    const reading = {
      date,
      time: time === '' ? null : time,
      openMps,
      spotMps,
      minutes,
      windFromDeg: fromDeg,
    };
    // One that cannot be kept says why, and stays to be put right.
    if (keepWindReading(appStore, kept, reading)) onDone();
  };
  const speed = (label: string, value: number | null, take: (mps: number) => void) => (
    <NumberField
      label={label}
      value={value === null ? null : speedIn(value, units)}
      unit={speedUnit(units)}
      min={0}
      max={Math.round(speedIn(MOST_MPS, units))}
      onChange={(typed) => take(speedFrom(typed, units))}
    />
  );
  return (
    <KeptForm
      label={`What was read: ${kept.name}`}
      missing={
        missing && (openMps === null || spotMps === null)
          ? 'Type what both meters showed in the mean; 0 where the one at the spot stood still.'
          : null
      }
      onKeep={keep}
      onDone={onDone}
    >
      {speed('Mean of the meter in the open', openMps, setOpenMps)}
      {speed('Mean of the meter at the spot', spotMps, setSpotMps)}
      <NumberField
        label="Both ran for"
        value={minutes}
        unit="minutes"
        min={1}
        max={120}
        onChange={setMinutes}
      />
      <NumberField
        label="The wind came from"
        value={fromDeg}
        unit="° from true north"
        digits={0}
        min={0}
        max={360}
        onChange={setFromDeg}
      />
      <div className="pair">
        <TextField label="Day" type="date" value={date} onChange={(day) => day !== '' && setDate(day)} />
        <TextField label="Time, if noted" type="time" value={time} onChange={setTime} />
      </div>
    </KeptForm>
  );
}
