import { type FormEvent, type ReactNode, useEffect, useRef } from 'react';

/** Where a reading is typed in: its first field has the focus, Escape leaves it. */
export function KeptForm(props: {
  label: string;
  /** What is still missing. */
  missing: string | null;
  onKeep: () => void;
  onDone: () => void;
  children: ReactNode;
}) {
  const { onDone } = props;
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector<HTMLInputElement>('input')?.focus(), []);
  return (
    <form
      ref={form}
      className="reading-form"
      aria-label={props.label}
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        props.onKeep();
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onDone();
      }}
    >
      {props.children}
      {props.missing === null ? null : (
        <p className="field-wrong" role="alert">
          {props.missing}
        </p>
      )}
      <div className="buttons">
        <button type="submit" className="main">
          Keep this reading
        </button>
        <button type="button" onClick={onDone}>
          Not now
        </button>
      </div>
    </form>
  );
}
