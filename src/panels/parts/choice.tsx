import { useId } from 'react';

/** One of a few, side by side. Radio buttons underneath, so the arrow keys work. */
export function Choice<Value extends string>(props: {
  label: string;
  value: Value;
  options: readonly { readonly value: Value; readonly label: string }[];
  onChange: (value: Value) => void;
  hideLabel?: boolean;
}) {
  const name = useId();
  return (
    <fieldset>
      <legend className={props.hideLabel ? 'unseen' : 'field-label'}>{props.label}</legend>
      <div className="choice">
        {props.options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              checked={option.value === props.value}
              onChange={() => props.onChange(option.value)}
            />
            {option.label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
