import { lengthFrom, lengthIn, lengthUnit } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { NumberField } from './number-field.tsx';

/** A length, typed and shown in the person's own measure, kept in metres. */
export function LengthField(props: {
  label: string;
  valueM: number | null;
  minM?: number;
  maxM?: number;
  hint?: string;
  onChange: (valueM: number) => void;
  onClear?: () => void;
}) {
  const units = useApp((app) => app.unitSystem);
  const shown = (metres: number | undefined) =>
    metres === undefined ? undefined : Number(lengthIn(metres, units).toFixed(2));
  return (
    <NumberField
      label={props.label}
      value={props.valueM === null ? null : lengthIn(props.valueM, units)}
      unit={lengthUnit(units)}
      min={shown(props.minM)}
      max={shown(props.maxM)}
      hint={props.hint}
      onChange={(value) => props.onChange(lengthFrom(value, units))}
      onClear={props.onClear}
    />
  );
}

/** A share, typed and shown as percent. */
export function ShareField(props: {
  label: string;
  value: number | null;
  hint?: string;
  onChange: (share: number) => void;
  onClear?: () => void;
}) {
  return (
    <NumberField
      label={props.label}
      value={props.value === null ? null : props.value * 100}
      unit="%"
      digits={1}
      min={0}
      max={100}
      hint={props.hint}
      onChange={(percent) => props.onChange(percent / 100)}
      onClear={props.onClear}
    />
  );
}
