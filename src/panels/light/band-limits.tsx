import { useState } from 'react';
import { setSite } from '../../site/actions/set-site.ts';
import { useApp } from '../../state/store.ts';
import { LIGHT_BAND_LIMITS, LIGHT_BANDS, lightLimitsProblem } from '../../units/bands.ts';
import { ShareField } from '../parts/length-field.tsx';
import { Details } from '../parts/panel-head.tsx';

/** Where each band of light begins, kept in the site. */
export function BandLimits() {
  const own = useApp((app) => app.document.site.lightBands);
  const edit = useApp((app) => app.edit);
  const [wrong, setWrong] = useState<string | null>(null);
  const limits = own ?? LIGHT_BAND_LIMITS;
  const change = (index: number, share: number) => {
    const next = limits.map((limit, i) => (i === index ? share : limit));
    const problem = lightLimitsProblem(next);
    setWrong(problem && `${problem} The band stays as it was.`);
    if (problem === null)
      edit('Change where a band of light begins', (site) => setSite(site, { lightBands: next }));
  };
  return (
    <Details title="Where the bands begin">
      <div className="pair">
        {LIGHT_BANDS.bands.slice(1).map(({ name }, index) => (
          <ShareField
            key={name}
            label={name[0].toUpperCase() + name.slice(1)}
            value={limits[index]}
            hint={index === 0 ? 'of open light; below it: deep shade' : undefined}
            onChange={(share) => change(index, share)}
          />
        ))}
      </div>
      {wrong ? (
        <p className="field-wrong" role="alert">
          {wrong}
        </p>
      ) : null}
      {own ? (
        <button
          type="button"
          onClick={() => {
            setWrong(null);
            edit('Bring back the usual bands of light', (site) => setSite(site, { lightBands: undefined }));
          }}
        >
          The usual bands
        </button>
      ) : null}
    </Details>
  );
}
