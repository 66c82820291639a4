import { useState } from 'react';
import type { Stake, StakePlan } from '../../stakes/stake-plan.ts';
import { keepReading } from '../../state/shadow-stakes.ts';
import { appStore } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { TextField } from '../parts/text-field.tsx';
import { KeptForm } from './kept-form.tsx';

const MISSING = {
  stake: 'Type how far beyond or short the tip was; 0 where it was on the stake.',
  tapes: 'Type both lengths.',
} as const;

/** What was seen at one stake. A side is chosen and not typed as a sign: many a telephone's digits have no minus. */
export function ReadingForm(props: { plan: StakePlan; stake: Stake; onDone: () => void }) {
  const { plan, stake, onDone } = props;
  const { a, b } = plan.line;
  const [time, setTime] = useState(stake.time);
  const [by, setBy] = useState<'stake' | 'tapes'>('stake');
  const [reach, setReach] = useState<'beyond' | 'short'>('beyond');
  const [reachM, setReachM] = useState<number | null>(null);
  const [side, setSide] = useState<'right' | 'left'>('right');
  const [sideM, setSideM] = useState<number | null>(null);
  const [fromAM, setFromAM] = useState<number | null>(null);
  const [fromBM, setFromBM] = useState<number | null>(null);
  const [missing, setMissing] = useState(false);

  const given = by === 'stake' ? reachM !== null : fromAM !== null && fromBM !== null;
  const keep = () => {
    if (!given || !/^\d\d:\d\d$/.test(time)) return setMissing(true);
    const seen =
      by === 'stake'
        ? {
            by,
            beyondM: (reachM ?? 0) * (reach === 'short' ? -1 : 1),
            rightM: (sideM ?? 0) * (side === 'left' ? -1 : 1),
          }
        : { by, fromAM: fromAM ?? 0, fromBM: fromBM ?? 0 };
    // One that cannot be kept says why, and stays to be put right.
    if (keepReading(appStore, plan, stake, time, seen)) onDone();
  };
  return (
    <KeptForm
      label={`What was seen at ${stake.time}`}
      missing={missing && !given ? MISSING[by] : null}
      onKeep={keep}
      onDone={onDone}
    >
      <TextField label="Seen at, by the clock there" type="time" value={time} onChange={setTime} />
      <Choice
        label="Measured"
        value={by}
        options={[
          { value: 'stake', label: 'from the stake' },
          { value: 'tapes', label: `from ${a.letter} and ${b.letter}` },
        ]}
        onChange={setBy}
      />
      {by === 'stake' ? (
        <>
          <Choice
            label="The tip was"
            value={reach}
            options={[
              { value: 'beyond', label: 'beyond it' },
              { value: 'short', label: 'short of it' },
            ]}
            onChange={setReach}
          />
          <LengthField label="by" valueM={reachM} minM={0} maxM={100} onChange={setReachM} />
          <Choice
            label="and, with your back to the sun,"
            value={side}
            options={[
              { value: 'right', label: 'to its right' },
              { value: 'left', label: 'to its left' },
            ]}
            onChange={setSide}
          />
          <LengthField
            label="by"
            valueM={sideM}
            minM={0}
            maxM={100}
            hint="empty: not to one side"
            onChange={setSideM}
            onClear={() => setSideM(null)}
          />
        </>
      ) : (
        <div className="pair">
          <LengthField label={`From ${a.letter}`} valueM={fromAM} minM={0} maxM={500} onChange={setFromAM} />
          <LengthField label={`From ${b.letter}`} valueM={fromBM} minM={0} maxM={500} onChange={setFromBM} />
        </div>
      )}
    </KeptForm>
  );
}
