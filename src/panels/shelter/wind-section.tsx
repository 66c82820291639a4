import { setSite } from '../../site/actions/set-site.ts';
import { windOfSite, windRestsOn } from '../../state/site-wind.ts';
import { useApp } from '../../state/store.ts';
import { windBand } from '../../state/wind-band.ts';
import { FileButton } from '../parts/file-button.tsx';
import { Details, Section } from '../parts/panel-head.tsx';
import { SectorTable } from './sector-table.tsx';
import { WindDirections } from './wind-directions.tsx';
import { WindLand } from './wind-land.tsx';
import { RoseKey, WindRose } from './wind-rose.tsx';
import { WindSigns } from './wind-signs.tsx';

/** Where the wind comes from: the rose, how often trees sway in it, and the ways to say what is known of it. */
export function WindSection() {
  const answer = useApp(windOfSite);
  const document = useApp((app) => app.document);
  const unitSystem = useApp((app) => app.unitSystem);
  const show = useApp((app) => app.show);
  const edit = useApp((app) => app.edit);
  const openFiles = useApp((app) => app.openFiles);
  const resting = useApp((app) => windBand(app) === 1);
  const { wind, weatherFile } = document.site;
  const found = 'wind' in answer ? answer.wind : null;
  return (
    <Section title="The wind">
      {'wrong' in answer ? <p className="warn small">{answer.wrong}</p> : null}
      {found ? (
        <>
          <WindRose
            caption={resting ? 'Rest of the year' : 'Growing season'}
            season={resting ? found.facts.rest : found.facts.growing}
            unitSystem={unitSystem}
          />
          <RoseKey />
          <p className="soft small">{windRestsOn({ document }, found).join(' ')}</p>
        </>
      ) : null}
      <div className="buttons">
        <button type="button" onClick={() => show({ dialog: 'wind-words' })}>
          Say it in words
        </button>
        <button type="button" onClick={() => show({ dialog: 'wind-drawn' })}>
          Draw it
        </button>
        <button type="button" onClick={() => show({ dialog: 'wind-table' })}>
          Type a table
        </button>
        <FileButton accept=".epw,.csv,.tmy3,.txt" onFiles={(files) => void openFiles(files)}>
          Open a weather file
        </FileButton>
        {wind?.sectors && weatherFile ? (
          <button
            type="button"
            onClick={() =>
              edit('Take the wind from the weather file', (site) => setSite(site, { wind: undefined }))
            }
          >
            Take the wind from {weatherFile}
          </button>
        ) : null}
      </div>
      {found ? <WindSigns facts={found.facts} /> : null}
      <div className="buttons">
        <button type="button" disabled={!found} onClick={() => show({ dialog: 'print-wind' })}>
          The wind on paper
        </button>
      </div>
      {found?.rests.measured ? (
        <Details title="Where it was measured">
          <WindLand rests={found.rests} />
        </Details>
      ) : null}
      {found ? (
        <Details title="Direction by direction">
          <WindDirections caption="Growing season" season={found.facts.growing} />
          <WindDirections caption="Rest of the year" season={found.facts.rest} />
          <p className="small soft">
            Speeds at 10 m at the site. c and k are scale and shape of the Weibull distribution fitted to each
            direction.
          </p>
        </Details>
      ) : null}
      {wind?.sectors ? (
        <Details title="Correct the sectors">
          <SectorTable wind={wind} />
        </Details>
      ) : null}
    </Section>
  );
}
