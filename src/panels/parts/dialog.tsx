import { type ReactNode, useEffect, useId, useRef } from 'react';
import './dialog.css';

/** What had the focus before the first of several dialogs, one in place of the other, was opened. */
let opener: HTMLElement | null = null;

/** A dialog over the app: the browser's own, so focus stays inside and Escape closes it; then the focus goes back. */
export function Dialog(props: {
  title: string;
  children: ReactNode;
  footer?: ReactNode;
  broad?: boolean;
  /** As wide as the window has room for a strip. */
  widest?: boolean;
  /** As large as the window. */
  whole?: boolean;
  onClose: () => void;
}) {
  const ref = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const dialog = ref.current;
    const focused = document.activeElement;
    if (focused instanceof HTMLElement && focused !== document.body && !dialog?.contains(focused))
      opener = focused;
    if (dialog && !dialog.open) dialog.showModal();
    return () => {
      dialog?.close();
      // Taken out of the page before it is closed, it would not give the focus back by itself.
      if (opener?.isConnected) opener.focus();
    };
  }, []);
  return (
    <dialog
      ref={ref}
      className={`dialog ${props.whole ? 'whole' : props.widest ? 'widest' : props.broad ? 'broad' : ''}`}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        props.onClose();
      }}
    >
      <header>
        <h2 id={titleId}>{props.title}</h2>
        <button type="button" onClick={props.onClose}>
          Close
        </button>
      </header>
      <div className="body">{props.children}</div>
      {props.footer ? <footer>{props.footer}</footer> : null}
    </dialog>
  );
}
