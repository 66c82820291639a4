import { type ReactNode, useEffect, useId, useRef } from 'react';
import './dialog.css';

/** A dialog over the app: the browser's own, so focus stays inside and Escape closes it. */
export function Dialog(props: {
  title: string;
  children: ReactNode;
  footer?: ReactNode;
  broad?: boolean;
  onClose: () => void;
}) {
  const ref = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const dialog = ref.current;
    if (dialog && !dialog.open) dialog.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      className={props.broad ? 'dialog broad' : 'dialog'}
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
