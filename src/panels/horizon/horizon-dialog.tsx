import { useMemo, useState } from 'react';
import { gotShare, gotWords, takesSentence } from '../../sheets/horizon-hours.ts';
import { NEVER_LOOK } from '../../sheets/horizon-texts.ts';
import type { Period } from '../../state/model.ts';
import { useApp } from '../../state/store.ts';
import { MONTHS } from '../../units/months.ts';
import { Answer } from '../parts/answer.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { horizonInput, horizonPeriod } from './horizon-input.ts';
import { HorizonKey } from './horizon-key.tsx';
import { HoursTable } from './hours-table.tsx';
import { StripView } from './strip-view.tsx';
import './horizon.css';

const PERIOD_OPTIONS = [
  { value: 'season', label: 'growing season' },
  { value: 'year', label: 'whole year' },
  ...MONTHS.map((label, month) => ({ value: String(month), label })),
];
const periodOf = (value: string): Period => (value === 'season' || value === 'year' ? value : Number(value));

/** What stands around a spot, unrolled, and what it takes of the sun there. */
export function HorizonDialog() {
  const horizon = useApp((app) => app.horizon);
  const horizonAt = useApp((app) => app.horizonAt);
  const document = useApp((app) => app.document);
  const centre = useApp((app) => app.centre);
  const unitSystem = useApp((app) => app.unitSystem);
  const period = useApp((app) => app.period);
  const layer = useApp((app) => app.layer);
  const year = useApp((app) => app.year);
  const show = useApp((app) => app.show);
  const [chosen, setChosen] = useState<number | null>(null);
  const input = useMemo(
    () => horizonInput({ horizon, horizonAt, document, centre, unitSystem }, new Date()),
    [horizon, horizonAt, document, centre, unitSystem],
  );
  const column = horizonPeriod(period);
  return (
    <Dialog
      title="Horizon from here"
      widest
      onClose={() => show({ dialog: null })}
      footer={
        <button
          type="button"
          className="main"
          disabled={!input}
          onClick={() => show({ dialog: 'print-horizon' })}
        >
          On paper
        </button>
      }
    >
      {input ? (
        <Answer
          figure={`${Math.round(100 * gotShare(input, column))} %`}
          aged={horizon.stale ? 'From before the last change.' : null}
        >
          {gotWords(input, column)}. {takesSentence(input, column)}
        </Answer>
      ) : horizon.status === 'failed' ? (
        <>
          <Answer figure="Not worked out" dark>
            {horizon.message}
          </Answer>
          <Recompute of="horizon" />
        </>
      ) : (
        <Answer figure="…">Looking around: {Math.round(100 * horizon.progress)} %.</Answer>
      )}
      <div className="horizon-choices">
        <SelectField
          label="Period"
          value={String(period)}
          options={PERIOD_OPTIONS}
          onChange={(value) => show({ period: periodOf(value) })}
        />
        <SelectField
          label="Height of the eye"
          value={layer}
          options={[
            { value: 'ground', label: 'ground layer' },
            { value: 'shrub', label: 'shrubs' },
          ]}
          onChange={(value) => show({ layer: value })}
        />
        <p className="small soft">Year {year} after planting.</p>
      </div>
      {input ? (
        <>
          <StripView input={input} chosen={chosen} />
          <div className="horizon-under">
            <HorizonKey input={input} />
            <HoursTable input={input} period={column} chosen={chosen} onChoose={setChosen} />
          </div>
          <p className="warn small">{NEVER_LOOK}</p>
        </>
      ) : null}
    </Dialog>
  );
}
