import { useEffect, useState } from 'react';
import { useApp } from '../../state/store.ts';

/** Files dropped anywhere on the page are opened. */
export function FileDrop() {
  const openFiles = useApp((app) => app.openFiles);
  const [over, setOver] = useState(false);
  useEffect(() => {
    const entered = (event: DragEvent) => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      setOver(true);
    };
    const left = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const dropped = (event: DragEvent) => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      setOver(false);
      void openFiles([...event.dataTransfer.files]);
    };
    window.addEventListener('dragover', entered);
    window.addEventListener('dragleave', left);
    window.addEventListener('drop', dropped);
    return () => {
      window.removeEventListener('dragover', entered);
      window.removeEventListener('dragleave', left);
      window.removeEventListener('drop', dropped);
    };
  }, [openFiles]);
  return over ? <p className="drop-here">Put the file down anywhere to open it.</p> : null;
}
