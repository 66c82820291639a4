import type { JobErrorCode, JobName } from './messages.ts';

/** What goes to a worker. */
export type ToWorker =
  | { readonly type: 'run'; readonly id: number; readonly name: JobName; readonly request: unknown }
  | { readonly type: 'cancel'; readonly id: number };

/** What comes back. Every job ends in exactly one `result` or `error`. */
export type FromWorker =
  | { readonly type: 'progress'; readonly id: number; readonly done: number }
  | { readonly type: 'result'; readonly id: number; readonly result: unknown; readonly elapsedMs: number }
  | { readonly type: 'error'; readonly id: number; readonly code: JobErrorCode; readonly message: string };

/** The buffers of all typed arrays in a result, each once, so that they are handed over and not copied. */
export function transferablesIn(value: unknown, found = new Set<ArrayBuffer>()): ArrayBuffer[] {
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
  } else if (value instanceof ArrayBuffer) {
    found.add(value);
  } else if (Array.isArray(value)) {
    for (const item of value) transferablesIn(item, found);
  } else if (value !== null && typeof value === 'object') {
    for (const item of Object.values(value)) transferablesIn(item, found);
  }
  return [...found];
}
