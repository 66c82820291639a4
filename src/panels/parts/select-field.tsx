import { useId } from 'react';

export function SelectField<Value extends string>(props: {
  label: string;
  value: Value;
  options: readonly { readonly value: Value; readonly label: string }[];
  hint?: string;
  onChange: (value: Value) => void;
}) {
  const id = useId();
  return (
    <div>
      <label className="field-label" htmlFor={id}>
        {props.label}
      </label>
      <select id={id} value={props.value} onChange={(event) => props.onChange(event.target.value as Value)}>
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      {props.hint ? <p className="field-hint">{props.hint}</p> : null}
    </div>
  );
}
