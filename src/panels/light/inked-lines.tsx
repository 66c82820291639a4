import { useId, useState } from 'react';
import {
  INKED_SCALES,
  inkedLines,
  inkedValueProblem,
  isLightQuantity,
  MOST_LINES,
} from '../../state/inked-lines.ts';
import type { LightQuantity } from '../../state/light-period.ts';
import { useApp } from '../../state/store.ts';
import { Section } from '../parts/panel-head.tsx';
import { parseNumber } from '../parts/parse-number.ts';
import './inked-lines.css';

/** Heavier lines on the map at values of one's own choice. */
export function InkedLines() {
  const picture = useApp((app) => app.picture);
  const inkedValues = useApp((app) => app.inkedValues);
  const document = useApp((app) => app.document);
  const show = useApp((app) => app.show);
  if (!isLightQuantity(picture)) return null;
  const lines = inkedLines({ picture, inkedValues, document });
  const values = lines.map(({ value }) => value);
  const set = (next: readonly number[] | null) => show({ inkedValues: { ...inkedValues, [picture]: next } });
  return (
    <Section title="Lines on the map">
      {lines.length > 0 ? (
        <ul className="inked-lines">
          {lines.map(({ value, words }) => (
            <li key={value}>
              <span>{words}</span>
              <button
                type="button"
                aria-label={`Take away: ${words}`}
                onClick={() => set(values.filter((each) => each !== value))}
              >
                Take away
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <p className="soft">None is drawn.</p>
      )}
      {lines.length < MOST_LINES ? (
        <AddLine
          key={picture}
          quantity={picture}
          there={values}
          onAdd={(value) => set([...values, value].sort((a, b) => a - b))}
        />
      ) : null}
      {picture === 'light-share' && inkedValues[picture] !== null ? (
        <button type="button" className="link" onClick={() => set(null)}>
          Only the light to keep
        </button>
      ) : null}
    </Section>
  );
}

function AddLine(props: {
  quantity: LightQuantity;
  there: readonly number[];
  onAdd: (value: number) => void;
}) {
  const id = useId();
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const { typed, unit } = INKED_SCALES[props.quantity];
  const add = () => {
    const number = parseNumber(text);
    if (number === null) return setWrong('Type a number, such as 40.');
    const problem = inkedValueProblem(props.quantity, number / typed, props.there);
    setWrong(problem);
    if (problem) return;
    setText('');
    props.onAdd(number / typed);
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <label className="field-label" htmlFor={id}>
        A line at
      </label>
      <div className="with-unit">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={wrong !== null}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={(event) => setText(event.target.value)}
        />
        <span className="soft">{unit}</span>
        <button type="submit">Draw it</button>
      </div>
      {wrong ? (
        <p id={`${id}-wrong`} className="field-wrong">
          {wrong}
        </p>
      ) : null}
    </form>
  );
}
