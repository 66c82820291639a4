import { setSite } from '../../site/actions/set-site.ts';
import { windBand } from '../../state/picture-raster.ts';
import { useApp } from '../../state/store.ts';
import { FileButton } from '../parts/file-button.tsx';
import { Details, Section } from '../parts/panel-head.tsx';
import { SectorTable } from './sector-table.tsx';
import { WindRose } from './wind-rose.tsx';

/** Where the wind comes from: the rose, and the three ways to say it. */
export function WindSection() {
  const climate = useApp((app) => app.windClimate);
  const wind = useApp((app) => app.document.site.wind);
  const weatherFile = useApp((app) => app.document.site.weatherFile);
  const units = useApp((app) => app.unitSystem);
  const show = useApp((app) => app.show);
  const openFiles = useApp((app) => app.openFiles);
  const edit = useApp((app) => app.edit);
  const rest = useApp(windBand) === 1;
  const from = wind
    ? 'as the site says'
    : weatherFile
      ? `from ${weatherFile}`
      : 'nothing is known of it: light wind from every side';
  return (
    <Section title="The wind">
      <p className="soft small">{from[0].toUpperCase() + from.slice(1)}.</p>
      {climate ? (
        <WindRose
          caption={rest ? 'Rest of the year' : 'Growing season'}
          sectors={(rest ? climate.rest : climate.growing).sectors}
          calmShare={(rest ? climate.rest : climate.growing).calmShare}
          unitSystem={units}
        />
      ) : null}
      <div className="buttons">
        <button type="button" onClick={() => show({ dialog: 'wind-words' })}>
          Say it in words
        </button>
        <FileButton accept=".epw,.csv,.tmy3" onFiles={(files) => void openFiles(files)}>
          Open a weather file
        </FileButton>
        {wind && weatherFile ? (
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
      {wind ? (
        <Details title="Correct the sectors">
          <SectorTable wind={wind} />
        </Details>
      ) : null}
    </Section>
  );
}
