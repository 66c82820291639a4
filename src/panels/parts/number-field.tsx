import { useEffect, useId, useState } from 'react';
import { parseNumber } from './parse-number.ts';

/**
 * A number with its unit. It is taken over when the person leaves the field or presses Enter; a wrong entry stays
 * visible with a sentence, and the old value is kept. Empty clears it when `onClear` is given.
 */
export function NumberField(props: {
  label: string;
  value: number | null;
  unit?: string;
  digits?: number;
  min?: number;
  max?: number;
  hint?: string;
  onChange: (value: number) => void;
  onClear?: () => void;
}) {
  const id = useId();
  const shown = props.value === null ? '' : tidy(props.value, props.digits ?? 2);
  const [text, setText] = useState(shown);
  const [wrong, setWrong] = useState<string | null>(null);
  useEffect(() => {
    setText(shown);
    setWrong(null);
  }, [shown]);

  const take = () => {
    if (text.trim() === shown) return setWrong(null);
    if (text.trim() === '' && props.onClear) return props.onClear();
    const value = parseNumber(text);
    if (value === null) return setWrong('Type a number, such as 3.5.');
    if (props.min !== undefined && value < props.min)
      return setWrong(`At least ${props.min}${props.unit ? ` ${props.unit}` : ''}.`);
    if (props.max !== undefined && value > props.max)
      return setWrong(`At most ${props.max}${props.unit ? ` ${props.unit}` : ''}.`);
    setWrong(null);
    props.onChange(value);
  };

  return (
    <div>
      <label className="field-label" htmlFor={id}>
        {props.label}
      </label>
      <div className="with-unit">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={wrong !== null}
          aria-describedby={wrong || props.hint ? `${id}-hint` : undefined}
          onChange={(event) => setText(event.target.value)}
          onBlur={take}
          onKeyDown={(event) => {
            if (event.key === 'Enter') take();
            if (event.key === 'Escape') setText(shown);
          }}
        />
        {props.unit ? <span className="soft">{props.unit}</span> : null}
      </div>
      {wrong || props.hint ? (
        <p id={`${id}-hint`} className={wrong ? 'field-wrong' : 'field-hint'}>
          {wrong ?? props.hint}
        </p>
      ) : null}
    </div>
  );
}

const tidy = (value: number, digits: number): string => String(Number(value.toFixed(digits)));
