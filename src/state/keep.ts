import type { StoreApi } from 'zustand/vanilla';
import type { SiteDocument } from '../site/document.ts';
import { serialiseSite } from '../site/serialise-site.ts';
import type { DeviceStore } from './device-store.ts';
import { KEPT_NAMES } from './kept-view.ts';
import type { App } from './model.ts';

/** Long enough to join the edits of one gesture, short enough that nobody closes a tab in between. */
const WAIT_MS = 150;

const HIDDEN = 'visibilitychange';

/**
 * Keeps every change of the site on the device. Writes are joined over a moment and flushed when the page is hidden
 * or left; they never overlap. Says so once when the device refuses.
 * @param page where `pagehide` and (bubbling from the document) `visibilitychange` arrive: the window.
 * @returns a function that stops it, after a last write.
 */
export function keepOnDevice(
  store: StoreApi<App>,
  device: DeviceStore,
  page: EventTarget,
  now: () => number = Date.now,
): () => Promise<void> {
  let kept: SiteDocument = store.getState().document;
  let keptEarlier = store.getState().earlierSites;
  let keptChoices = choicesOf(store.getState());
  let timer: ReturnType<typeof setTimeout> | null = null;
  let writing: Promise<void> = Promise.resolve();
  let refused = false;

  const write = async () => {
    const state = store.getState();
    const choices = choicesOf(state);
    try {
      // First what is about to be replaced, then what replaces it.
      if (state.earlierSites !== keptEarlier) {
        const { earlierSites } = state;
        await device.writeEarlier(earlierSites.map(({ text }) => text));
        keptEarlier = earlierSites;
      }
      if (state.document !== kept) {
        const { document } = state;
        const savedAtMs = now();
        await device.writeSite(serialiseSite(document), savedAtMs);
        kept = document;
        store.setState({ savedAtMs });
      }
      if (!sameChoices(choices, keptChoices)) {
        await device.writeChoices(choices);
        keptChoices = choices;
      }
      refused = false;
    } catch {
      if (!refused)
        store.getState().say({
          tone: 'warning',
          text: 'This browser does not let the site be kept on this device. Save the file before you close the page.',
        });
      refused = true;
    }
  };
  const flush = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    writing = writing.then(write);
    return writing;
  };
  const unsubscribe = store.subscribe((state, before) => {
    if (state.document === before.document && sameChoices(choicesOf(state), choicesOf(before))) return;
    timer ??= setTimeout(flush, WAIT_MS);
  });
  // A transaction begun while the page goes away may not end: the text is also put where writing is immediate.
  const leaving = () => {
    const { document } = store.getState();
    if (document !== kept) {
      try {
        device.writeSiteNow(serialiseSite(document), now());
      } catch {
        // Too large for that place, or refused: the transaction below is the only chance.
      }
    }
    void flush();
  };
  page.addEventListener('pagehide', leaving);
  page.addEventListener(HIDDEN, leaving);
  return async () => {
    unsubscribe();
    page.removeEventListener('pagehide', leaving);
    page.removeEventListener(HIDDEN, leaving);
    await flush();
  };
}

const choicesOf = (app: App): Record<string, unknown> =>
  Object.fromEntries(KEPT_NAMES.map((name) => [name, app[name]]));

const sameChoices = (a: Record<string, unknown>, b: Record<string, unknown>): boolean =>
  KEPT_NAMES.every((name) => Object.is(a[name], b[name]));
