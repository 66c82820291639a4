import { useEffect } from 'react';
import { appStore } from '../../state/store.ts';

/** Undo and redo from the keyboard, unless a text is being typed (the browser undoes that itself). */
export function useShortcuts(): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      // The map has keys of its own, and may have answered already.
      if (event.defaultPrevented) return;
      const target = event.target as HTMLElement | null;
      if (target?.closest('input[type="text"], input[type="search"], textarea, dialog')) return;
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key === 'z') {
        event.preventDefault();
        if (event.shiftKey) appStore.getState().redo();
        else appStore.getState().undo();
      } else if (key === 'y') {
        event.preventDefault();
        appStore.getState().redo();
      } else if (key === 's') {
        event.preventDefault();
        appStore.getState().saveFile();
      }
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, []);
}
