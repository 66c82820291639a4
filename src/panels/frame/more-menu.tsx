import { useRef } from 'react';
import { useApp } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { FileButton } from '../parts/file-button.tsx';
import { ACCEPTED_FILES } from './accepted-files.ts';

/** Sites, units and the look; on a narrow screen also the buttons that find no room in the header. */
export function MoreMenu() {
  const menu = useRef<HTMLDetailsElement>(null);
  const app = useApp((state) => state);
  const close = () => {
    if (menu.current) menu.current.open = false;
  };
  const run = (act: () => void) => () => {
    close();
    act();
  };
  return (
    <details
      ref={menu}
      className="more"
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) close();
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        close();
        menu.current?.querySelector('summary')?.focus();
      }}
    >
      <summary>More</summary>
      <div>
        <div className="buttons only-narrow">
          <button type="button" disabled={app.redoLabel === null} onClick={run(app.redo)}>
            Redo
          </button>
          <FileButton
            accept={ACCEPTED_FILES}
            multiple
            onFiles={(files) => run(() => void app.openFiles(files))()}
          >
            Open
          </FileButton>
          <button type="button" onClick={run(app.saveFile)}>
            Save file
          </button>
          <button type="button" onClick={run(() => app.show({ dialog: 'print' }))}>
            Print this page
          </button>
          <button type="button" onClick={run(() => app.show({ dialog: 'layouts' }))}>
            Layouts
          </button>
        </div>
        <div className="buttons">
          <button type="button" onClick={run(() => app.show({ dialog: 'new-site' }))}>
            New site
          </button>
          <button type="button" onClick={run(() => void app.openDemo('sorrel-bank'))}>
            Open the demo, Sorrel Bank
          </button>
          <button type="button" onClick={run(() => void app.openDemo('kestrel-flat'))}>
            Open Kestrel Flat, in the south
          </button>
        </div>
        {app.earlierSites.length > 0 ? (
          <div className="buttons">
            <p className="field-label">Open before on this device</p>
            {app.earlierSites.map(({ document, text }) => (
              <button
                key={text}
                type="button"
                onClick={run(() =>
                  app.openDocument(document, {
                    dialog: null,
                    layout: document.site.layouts?.[0]?.name ?? null,
                  }),
                )}
              >
                {`Back to ${document.site.name || 'a site without a name'}`}
              </button>
            ))}
          </div>
        ) : null}
        <Choice
          label="Measures"
          value={app.unitSystem}
          options={[
            { value: 'metric', label: 'metres' },
            { value: 'imperial', label: 'feet' },
          ]}
          onChange={(unitSystem) => app.show({ unitSystem })}
        />
        <Choice
          label="Paper"
          value={app.theme}
          options={[
            { value: 'as-device', label: 'as the device' },
            { value: 'light', label: 'light' },
            { value: 'dark', label: 'dark' },
          ]}
          onChange={(theme) => app.show({ theme })}
        />
      </div>
    </details>
  );
}
