/**
 * Undo and redo over documents of any type. A plain value: every function returns a new history. One step per gesture:
 * between `beginGesture` and `commitGesture` any number of previews replace each other and leave no step behind.
 */
export interface History<Document> {
  readonly present: Document;
  /** Oldest first: the document before each step and the step's label. */
  readonly past: readonly Step<Document>[];
  /** Next to redo last: the document after each undone step and the step's label. */
  readonly future: readonly Step<Document>[];
  /** The document before the gesture that is going on; absent when none is. */
  readonly gestureFrom?: Document;
}
interface Step<Document> {
  readonly label: string;
  readonly document: Document;
}

/** Steps kept. Documents share what did not change, so a step costs little. */
const MOST_STEPS = 200;

export const startHistory = <D>(document: D): History<D> => ({ present: document, past: [], future: [] });

/** One finished edit. A gesture that is going on is abandoned first; an edit that changes nothing leaves no step. */
export function push<D>(history: History<D>, label: string, document: D): History<D> {
  const { present, past } = abandonGesture(history);
  if (document === present) return abandonGesture(history);
  return {
    present: document,
    past: [...past, { label, document: present }].slice(-MOST_STEPS),
    future: [],
  };
}

export const beginGesture = <D>(history: History<D>): History<D> =>
  history.gestureFrom === undefined ? { ...history, gestureFrom: history.present } : history;

/** Shows a document on the way; begins a gesture if none is going on. */
export const preview = <D>(history: History<D>, document: D): History<D> => ({
  ...beginGesture(history),
  present: document,
});

/** What a gesture started from: previews are worked out from it, not from each other. */
export const gestureBase = <D>(history: History<D>): D => history.gestureFrom ?? history.present;

/** Ends the gesture as one step. */
export function commitGesture<D>(history: History<D>, label: string): History<D> {
  return history.gestureFrom === undefined ? history : push(abandonGesture(history), label, history.present);
}

/** Ends the gesture as if it had not been. */
export function abandonGesture<D>(history: History<D>): History<D> {
  if (history.gestureFrom === undefined) return history;
  const { gestureFrom, ...rest } = history;
  return { ...rest, present: gestureFrom };
}

/** One step back; during a gesture only the gesture is given up. */
export function undo<D>(history: History<D>): History<D> {
  if (history.gestureFrom !== undefined) return abandonGesture(history);
  const step = history.past.at(-1);
  if (!step) return history;
  return {
    present: step.document,
    past: history.past.slice(0, -1),
    future: [...history.future, { label: step.label, document: history.present }],
  };
}

export function redo<D>(history: History<D>): History<D> {
  if (history.gestureFrom !== undefined) return history;
  const step = history.future.at(-1);
  if (!step) return history;
  return {
    present: step.document,
    past: [...history.past, { label: step.label, document: history.present }],
    future: history.future.slice(0, -1),
  };
}

/** What undo and redo would do, for their buttons; null when there is nothing. */
export const undoLabel = <D>(history: History<D>): string | null => history.past.at(-1)?.label ?? null;
export const redoLabel = <D>(history: History<D>): string | null => history.future.at(-1)?.label ?? null;
