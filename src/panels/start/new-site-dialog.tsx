import { useId, useState } from 'react';
import { placeFromText } from '../../geo/place-from-text.ts';
import { useApp } from '../../state/store.ts';
import { Dialog } from '../parts/dialog.tsx';
import { FileButton } from '../parts/file-button.tsx';
import { PLACES } from './places.ts';

const TYPED = 'typed';

/** Where a site begins: a name and a place, or a file, or the demo. */
export function NewSiteDialog() {
  const id = useId();
  const show = useApp((app) => app.show);
  const newSite = useApp((app) => app.newSite);
  const openDemo = useApp((app) => app.openDemo);
  const openFiles = useApp((app) => app.openFiles);
  const [name, setName] = useState('');
  const [from, setFrom] = useState<string>(TYPED);
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const close = () => show({ dialog: null });
  const start = () => {
    try {
      const listed = PLACES.find((place) => place.name === from);
      const lonLat = listed ? listed.lonLat : placeFromText(text);
      void newSite(lonLat, name);
    } catch (reason) {
      setWrong((reason as Error).message);
    }
  };
  return (
    <Dialog
      title="Start a new site"
      onClose={close}
      footer={
        <button type="button" className="main" onClick={start}>
          Start here
        </button>
      }
    >
      <p className="soft">The open site is replaced: save its file first if you want to keep it.</p>
      <div>
        <label className="field-label" htmlFor={`${id}-name`}>
          Name of the site
        </label>
        <input
          id={`${id}-name`}
          type="text"
          value={name}
          placeholder="Long Meadow"
          onChange={(event) => setName(event.target.value)}
        />
      </div>
      <div>
        <label className="field-label" htmlFor={`${id}-from`}>
          Where is it?
        </label>
        <select id={`${id}-from`} value={from} onChange={(event) => setFrom(event.target.value)}>
          <option value={TYPED}>I know the latitude and longitude</option>
          {PLACES.map((place) => (
            <option key={place.name} value={place.name}>
              somewhere like: {place.name}
            </option>
          ))}
        </select>
      </div>
      {from === TYPED ? (
        <div>
          <label className="field-label" htmlFor={`${id}-place`}>
            Latitude and longitude
          </label>
          <input
            id={`${id}-place`}
            type="text"
            value={text}
            aria-invalid={wrong !== null}
            aria-describedby={`${id}-hint`}
            placeholder="45.1, -64.5"
            onChange={(event) => {
              setText(event.target.value);
              setWrong(null);
            }}
            onKeyDown={(event) => {
              if (event.key === 'Enter') start();
            }}
          />
          <p id={`${id}-hint`} className={wrong ? 'field-wrong' : 'field-hint'}>
            {wrong ??
              'In degrees, or degrees, minutes and seconds: 45°06′ N 64°30′ W. A phone standing in the field shows both.'}
          </p>
        </div>
      ) : (
        <p className="field-hint">
          Good enough to begin: the sun’s path is right to half an hour’s drive. Correct it later by a file or
          a boundary.
        </p>
      )}
      <div className="section">
        <h2>Or begin from what there is</h2>
        <div className="buttons">
          <FileButton
            accept=".geojson,.json"
            onFiles={(files) => {
              close();
              void openFiles(files);
            }}
          >
            Open a site file
          </FileButton>
          <button type="button" onClick={() => void openDemo('sorrel-bank')}>
            Open the demo, Sorrel Bank
          </button>
        </div>
      </div>
    </Dialog>
  );
}
