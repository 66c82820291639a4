import type { ReactNode } from 'react';

/** The answer first: a big figure and a sentence that says what it means. `dark` marks an answer that asks for a change. */
export function Answer(props: { figure: string; children: ReactNode; dark?: boolean; aged?: string | null }) {
  return (
    <div className={props.dark ? 'answer dark' : 'answer'} aria-live="polite">
      <strong>{props.figure}</strong>
      <p>{props.children}</p>
      {props.aged ? <p className="aged">{props.aged}</p> : null}
    </div>
  );
}
