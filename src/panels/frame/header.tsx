import { useApp } from '../../state/store.ts';
import { FileButton } from '../parts/file-button.tsx';
import { ACCEPTED_FILES } from './accepted-files.ts';
import { LayoutChoice } from './layout-choice.tsx';
import { MoreMenu } from './more-menu.tsx';
import { SiteName } from './site-name.tsx';

/** Name, undo and redo, files, print: what is the same on every step. */
export function Header() {
  const undoLabel = useApp((app) => app.undoLabel);
  const redoLabel = useApp((app) => app.redoLabel);
  const undo = useApp((app) => app.undo);
  const redo = useApp((app) => app.redo);
  const openFiles = useApp((app) => app.openFiles);
  const saveFile = useApp((app) => app.saveFile);
  const show = useApp((app) => app.show);
  return (
    <header className="head">
      <span className="product">
        Lee<i>glade</i>
      </span>
      <SiteName />
      <LayoutChoice />
      <button type="button" className="wide-only" onClick={() => show({ dialog: 'layouts' })}>
        Layouts
      </button>
      <span className="gap" />
      <Saved />
      <button
        type="button"
        disabled={undoLabel === null}
        title={undoLabel ? `Undo: ${undoLabel}` : undefined}
        onClick={undo}
      >
        Undo{undoLabel ? <span className="undo-label soft">&nbsp;{lowerFirst(undoLabel)}</span> : null}
      </button>
      <button
        type="button"
        className="wide-only"
        disabled={redoLabel === null}
        title={redoLabel ? `Redo: ${redoLabel}` : undefined}
        onClick={redo}
      >
        Redo
      </button>
      <FileButton
        accept={ACCEPTED_FILES}
        multiple
        className="wide-only"
        onFiles={(files) => void openFiles(files)}
      >
        Open
      </FileButton>
      <button type="button" className="wide-only" onClick={saveFile}>
        Save file
      </button>
      <button type="button" className="wide-only" onClick={() => show({ dialog: 'print' })}>
        Print this page
      </button>
      <MoreMenu />
    </header>
  );
}

const lowerFirst = (text: string): string => text[0].toLowerCase() + text.slice(1);

function Saved() {
  const savedAtMs = useApp((app) => app.savedAtMs);
  if (savedAtMs === null) return <span className="saved wide-only" />;
  const time = new Date(savedAtMs).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  return <span className="saved wide-only">Saved on this device {time}</span>;
}
