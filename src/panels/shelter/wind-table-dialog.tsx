import { useId, useState } from 'react';
import { setSite } from '../../site/actions/set-site.ts';
import { windWith } from '../../state/site-wind.ts';
import { appStore } from '../../state/store.ts';
import { type TableUnit, tableOfWind, windFromTyped } from '../../state/wind-table.ts';
import { Dialog } from '../parts/dialog.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { BothRoses } from './both-roses.tsx';

const UNITS = [
  { value: 'm/s', label: 'm/s' },
  { value: 'km/h', label: 'km/h' },
  { value: 'knots', label: 'knots' },
  { value: 'mph', label: 'mph' },
] as const;
const EXAMPLE = 'SW  18  5.2\nW  12  5.6\nNE  7  6.1  rest\ncalm  4';

/** A small table of winds, typed or pasted from a sheet, with what was understood of it beside. */
export function WindTableDialog() {
  const id = useId();
  const [app] = useState(appStore.getState);
  const [text, setText] = useState('');
  const [unit, setUnit] = useState<TableUnit>(app.unitSystem === 'metric' ? 'm/s' : 'mph');
  const [heightM, setHeightM] = useState(app.document.site.wind?.heightM ?? 10);
  // Lines that began as the site's own wind are not moved to its land once more.
  const [own, setOwn] = useState(false);
  const read = windFromTyped(text, unit, heightM, own ? undefined : app.document.site.wind?.siteRoughnessM);
  const beginWithOwn = () => {
    setOwn(true);
    setHeightM(10);
    setText(tableOfWind(app, unit));
  };
  const close = () => app.show({ dialog: null });
  const take = () => {
    if (!('wind' in read)) return;
    app.edit('Type the wind as a table', (site) => setSite(site, { wind: read.wind }));
    close();
  };
  return (
    <Dialog
      title="The wind as a table"
      broad
      onClose={close}
      footer={
        <button type="button" className="main" disabled={!('wind' in read)} onClick={take}>
          Use this wind
        </button>
      }
    >
      <p className="soft">
        A line for each direction: where the wind comes from, the share of the hours in percent, its mean
        speed, and, where the seasons differ, “growing” or “rest”. “calm” may stand for a direction. Cells
        copied from a sheet can be pasted.
      </p>
      <div className="both-roses">
        <div className="wide-gap section">
          <div>
            <label className="field-label" htmlFor={id}>
              Direction, % of hours, mean speed, season
            </label>
            <textarea
              id={id}
              className="wind-lines"
              rows={12}
              spellCheck={false}
              placeholder={EXAMPLE}
              value={text}
              aria-describedby={`${id}-said`}
              onChange={(event) => setText(event.target.value)}
            />
            <p id={`${id}-said`} className={'wrong' in read && text !== '' ? 'field-wrong' : 'field-hint'}>
              {'wrong' in read ? (text === '' ? 'Nothing is typed yet.' : read.wrong) : read.notes.join(' ')}
            </p>
          </div>
        </div>
        <div className="wide-gap section">
          <div className="pair">
            <SelectField label="Speeds are in" value={unit} options={UNITS} onChange={setUnit} />
            <LengthField
              label="Measured above the ground"
              valueM={heightM}
              minM={0.5}
              maxM={200}
              onChange={setHeightM}
            />
          </div>
          <div className="buttons">
            <button type="button" onClick={beginWithOwn}>
              Begin with the wind as it is
            </button>
          </div>
          <p className="soft small">
            The shares may leave out what is rare: they are taken as parts of all hours. An even rose of 8,
            12, 16 or 36 directions stands for all sides; any other list for single directions.
          </p>
        </div>
      </div>
      {'wind' in read ? <BothRoses answer={windWith(app, read.wind)} /> : null}
    </Dialog>
  );
}
