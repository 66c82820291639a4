import { useState } from 'react';
import type { StakesView } from '../../state/model.ts';
import type { StakesAnswer } from '../../state/shadow-stakes.ts';
import { useApp } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { TextField } from '../parts/text-field.tsx';
import { parseTimes } from './parse-times.ts';
import { TapeFrom } from './tape-from.tsx';

const FURTHEST = 'furthest';

/** Which day, which times, what of the thing, and what is taped from. */
export function StakesChoices(props: { answer: StakesAnswer }) {
  const { plan, points } = props.answer;
  const stakes = useApp((app) => app.stakes);
  const show = useApp((app) => app.show);
  const [wrongTime, setWrongTime] = useState<string | null>(null);
  if (!stakes) return null;
  const ask = (part: Partial<StakesView>) => show({ stakes: { ...stakes, ...part } });
  const takeTimes = (text: string) => {
    const read = parseTimes(text);
    if ('wrong' in read) return setWrongTime(read.wrong);
    setWrongTime(null);
    ask({ times: read.times.length > 0 ? read.times : null });
  };
  const places = plan?.thing.places ?? [];
  return (
    <div className="section wide-gap">
      <TextField
        label="Day"
        type="date"
        value={stakes.date}
        onChange={(date) => {
          if (date !== '') ask({ date });
        }}
      />
      <Choice
        label="Clock times"
        value={stakes.times ? 'mine' : 'hours'}
        options={[
          { value: 'hours', label: 'every full hour' },
          { value: 'mine', label: 'times I choose' },
        ]}
        onChange={(which) =>
          ask({ times: which === 'hours' ? null : (plan?.stakes.map(({ time }) => time) ?? ['12:00']) })
        }
      />
      {stakes.times ? (
        <div>
          <TextField
            label="At"
            value={stakes.times.join(', ')}
            hint="by the clocks there, such as 09:30, 12:00, 15:15"
            onChange={takeTimes}
          />
          {wrongTime ? (
            <p className="field-wrong">{`“${wrongTime}” is no clock time; type one such as 09:30.`}</p>
          ) : null}
        </div>
      ) : null}
      {places.length > 1 ? (
        <SelectField
          label="Shadow of"
          value={plan?.alongM === null ? FURTHEST : String(plan?.alongM)}
          options={places.map(({ alongM, words }) => ({
            value: alongM === null ? FURTHEST : String(alongM),
            label: words,
          }))}
          onChange={(value) => ask({ alongM: value === FURTHEST ? null : Number(value) })}
        />
      ) : null}
      <TapeFrom
        points={points}
        line={plan ? [plan.line.a.letter, plan.line.b.letter] : stakes.line}
        chosen={stakes.line !== null}
        onChange={(line) => ask({ line })}
      >
        <LengthField
          label="Longest shadow to tape"
          valueM={stakes.longestM}
          minM={1}
          maxM={400}
          onChange={(longestM) => ask({ longestM })}
        />
      </TapeFrom>
    </div>
  );
}
