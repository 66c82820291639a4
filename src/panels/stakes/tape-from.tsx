import type { ReactNode } from 'react';
import type { FindablePoint } from '../../outside/findable-points.ts';
import { Details } from '../parts/panel-head.tsx';
import { SelectField } from '../parts/select-field.tsx';

interface TapeFromProps {
  points: readonly FindablePoint[];
  /** Letters that are taped from now; null where there are none. */
  line: readonly [string, string] | null;
  /** True where the person chose them. */
  chosen: boolean;
  /** What the nearest side of a field is taken for: null. */
  onChange: (line: readonly [string, string] | null) => void;
}

/** Which two points are taped from, and what else is asked of the taping. */
export function TapeFrom(props: TapeFromProps & { children: ReactNode }) {
  const { children, ...points } = props;
  const [a, b] = points.line ?? ['', ''];
  return (
    <Details title={a && b ? `Tape from ${a} and ${b}` : 'Tape from'}>
      <TwoPoints {...points} />
      {children}
    </Details>
  );
}

function TwoPoints({ points, line, chosen, onChange }: TapeFromProps) {
  const [a, b] = line ?? ['', ''];
  const lettered = points.map(({ letter, words }) => ({ value: letter, label: `${letter}: ${words}` }));
  const take = (next: readonly [string, string]) => {
    if (next[0] !== next[1]) onChange(next);
  };
  if (lettered.length < 2) return null;
  return (
    <>
      <SelectField
        label="First, where the tape begins"
        value={a}
        options={lettered}
        onChange={(letter) => take([letter, b])}
      />
      <SelectField
        label="Second, where it points to"
        value={b}
        options={lettered}
        onChange={(letter) => take([a, letter])}
      />
      {chosen ? (
        <button type="button" onClick={() => onChange(null)}>
          Take the nearest side again
        </button>
      ) : null}
    </>
  );
}
