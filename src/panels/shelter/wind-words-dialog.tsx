import { useState } from 'react';
import { windWith } from '../../state/site-wind.ts';
import { appStore, useApp } from '../../state/store.ts';
import { HOW_OFTEN, LAND_SIGNS, type WindSaying, windFromWords } from '../../state/wind-in-words.ts';
import { EIGHT_POINTS } from '../../units/compass.ts';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { BothRoses } from './both-roses.tsx';

interface KeyedSaying extends WindSaying {
  readonly key: number;
}
const FIRST: WindSaying = { from: 225, season: 'year', force: 6, howOften: 'often' };
const SEASONS = [
  { value: 'year', label: 'all year' },
  { value: 'growing', label: 'in the growing season' },
  { value: 'rest', label: 'in the rest of the year' },
] as const;

/** Wind as people tell it, turned into sectors that can be corrected afterwards. */
export function WindWordsDialog() {
  const show = useApp((app) => app.show);
  const close = () => show({ dialog: null });
  const edit = useApp((app) => app.edit);
  const [app] = useState(appStore.getState);
  const [sayings, setSayings] = useState<readonly KeyedSaying[]>([{ ...FIRST, key: 0 }]);
  const record = windFromWords(sayings);
  const change = (index: number, part: Partial<WindSaying>) =>
    setSayings(sayings.map((saying, i) => (i === index ? { ...saying, ...part } : saying)));
  const take = () => {
    edit('Set the wind in words', (document) => ({ ...document, site: { ...document.site, wind: record } }));
    close();
  };
  return (
    <Dialog
      title="The wind in words"
      onClose={close}
      footer={
        <button type="button" className="main" onClick={take}>
          Use this wind
        </button>
      }
    >
      <p className="soft">
        Say what you know of the wind on this site. What you leave out is taken as light air from every side.
      </p>
      {sayings.map((saying, index) => (
        <fieldset key={saying.key} className="saying">
          <legend className="field-label">Wind {index + 1}</legend>
          <div className="pair">
            <SelectField
              label="From the"
              value={String(saying.from)}
              options={EIGHT_POINTS.map(({ azimuthDeg, name }) => ({
                value: String(azimuthDeg),
                label: name,
              }))}
              onChange={(value) => change(index, { from: Number(value) })}
            />
            <SelectField
              label="When"
              value={saying.season}
              options={SEASONS}
              onChange={(season) => change(index, { season })}
            />
            <SelectField
              label="On a strong day"
              value={String(saying.force)}
              options={LAND_SIGNS.map(({ force, words }) => ({ value: String(force), label: words }))}
              onChange={(value) => change(index, { force: Number(value) })}
            />
            <SelectField
              label="How often"
              value={saying.howOften}
              options={Object.entries(HOW_OFTEN).map(([value, label]) => ({
                value: value as WindSaying['howOften'],
                label,
              }))}
              onChange={(howOften) => change(index, { howOften })}
            />
          </div>
          {sayings.length > 1 ? (
            <button
              type="button"
              className="link"
              onClick={() => setSayings(sayings.filter((_, i) => i !== index))}
            >
              Take this wind out
            </button>
          ) : null}
        </fieldset>
      ))}
      <div className="buttons">
        <button
          type="button"
          onClick={() =>
            setSayings([...sayings, { ...FIRST, key: 1 + Math.max(...sayings.map((one) => one.key)) }])
          }
        >
          Another wind
        </button>
      </div>
      <BothRoses answer={windWith(app, record)} />
    </Dialog>
  );
}
