import type { ReactNode } from 'react';

/** A panel opens with its question. */
export function PanelHead(props: { question: string; children?: ReactNode }) {
  return (
    <header>
      <h1>{props.question}</h1>
      {props.children ? <p>{props.children}</p> : null}
    </header>
  );
}

export function Section(props: { title: string; children: ReactNode }) {
  return (
    <section className="section">
      <h2>{props.title}</h2>
      {props.children}
    </section>
  );
}

export function Details(props: { title: string; open?: boolean; children: ReactNode }) {
  return (
    <details className="fold" open={props.open}>
      <summary>{props.title}</summary>
      <div>{props.children}</div>
    </details>
  );
}
