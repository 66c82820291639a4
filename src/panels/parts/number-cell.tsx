import { useEffect, useState } from 'react';
import { parseNumber } from './parse-number.ts';

/** A number in a table, without a visible label; a wrong entry keeps the old value and is marked. */
export function NumberCell(props: {
  label: string;
  value: number | null;
  digits: number;
  min?: number;
  max?: number;
  onChange: (value: number) => void;
}) {
  const shown = props.value === null ? '' : String(Number(props.value.toFixed(props.digits)));
  const [text, setText] = useState(shown);
  const [wrong, setWrong] = useState(false);
  useEffect(() => {
    setText(shown);
    setWrong(false);
  }, [shown]);
  const take = () => {
    if (text.trim() === shown) return setWrong(false);
    const value = parseNumber(text);
    const bad =
      value === null ||
      (props.min !== undefined && value < props.min) ||
      (props.max !== undefined && value > props.max);
    setWrong(bad);
    if (!bad) props.onChange(value);
  };
  return (
    <input
      className="cell"
      type="text"
      inputMode="decimal"
      autoComplete="off"
      aria-label={props.label}
      aria-invalid={wrong}
      value={text}
      onChange={(event) => setText(event.target.value)}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take();
        if (event.key === 'Escape') setText(shown);
      }}
    />
  );
}
