import { type ReactNode, useEffect, useId, useState } from 'react';

/** A line of text, taken over on leaving the field or Enter. */
export function TextField(props: {
  label: string;
  value: string;
  hint?: ReactNode;
  placeholder?: string;
  type?: 'text' | 'date' | 'time' | 'url';
  onChange: (value: string) => void;
}) {
  const id = useId();
  const [text, setText] = useState(props.value);
  useEffect(() => setText(props.value), [props.value]);
  const take = () => {
    if (text !== props.value) props.onChange(text);
  };
  return (
    <div>
      <label className="field-label" htmlFor={id}>
        {props.label}
      </label>
      <input
        id={id}
        type={props.type ?? 'text'}
        autoComplete="off"
        value={text}
        placeholder={props.placeholder}
        aria-describedby={props.hint ? `${id}-hint` : undefined}
        onChange={(event) => {
          setText(event.target.value);
          if (props.type === 'date' || props.type === 'time') props.onChange(event.target.value);
        }}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
        }}
      />
      {props.hint ? (
        <p id={`${id}-hint`} className="field-hint">
          {props.hint}
        </p>
      ) : null}
    </div>
  );
}
