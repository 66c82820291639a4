import { setSite } from '../../site/actions/set-site.ts';
import { defaultGrowingSeason } from '../../site/records/site.ts';
import { useApp } from '../../state/store.ts';
import { FileButton } from '../parts/file-button.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Details } from '../parts/panel-head.tsx';
import { TextField } from '../parts/text-field.tsx';
import { Problems } from './problems.tsx';
import { Underlays } from './underlays.tsx';

/** What lies under the plan, when things grow, and what deserves a look. */
export function GroundDetails() {
  const site = useApp((app) => app.document.site);
  const latDeg = useApp((app) => app.centre[1]);
  const edit = useApp((app) => app.edit);
  const show = useApp((app) => app.show);
  const openFiles = useApp((app) => app.openFiles);
  const season = site.growingSeason ?? defaultGrowingSeason(latDeg);
  const setSeason = (part: Partial<typeof season>) =>
    edit('Change the growing season', (document) =>
      setSite(document, { growingSeason: { ...season, ...part } }),
    );
  return (
    <div>
      <Problems />
      <Details title="A map or photo under the plan">
        <p className="soft">
          A scan of a paper map or an air photo is laid on by two points of it whose distance is known.
        </p>
        <div className="buttons">
          <FileButton accept="image/*" onFiles={(files) => void openFiles(files)}>
            Lay a picture on
          </FileButton>
        </div>
        <Underlays />
      </Details>
      <Details title="Season and first year">
        <div className="pair">
          <TextField
            label="Season begins"
            value={season.firstDay}
            hint="month-day"
            onChange={(firstDay) => setSeason({ firstDay })}
          />
          <TextField
            label="Season ends"
            value={season.lastDay}
            hint="month-day"
            onChange={(lastDay) => setSeason({ lastDay })}
          />
        </div>
        <NumberField
          label="Year 0 is"
          value={site.baseYear}
          digits={0}
          min={1900}
          max={2200}
          onChange={(baseYear) =>
            edit('Change the first year', (document) => setSite(document, { baseYear: Math.round(baseYear) }))
          }
        />
        <TextField
          label="Time zone"
          value={site.timeZone}
          onChange={(timeZone) => edit('Change the time zone', (document) => setSite(document, { timeZone }))}
        />
      </Details>
      <Details title="The place">
        <Place />
        <div className="buttons">
          <button type="button" onClick={() => show({ dialog: 'new-site' })}>
            Start a new site somewhere else
          </button>
        </div>
      </Details>
      <Details title="Before you dig">
        <p className="caution">
          Flower-rich grass, peat, archaeology and nesting birds may be protected; old contamination and
          herbicide residue in hay or manure stay for years. Ask whoever looks after them where you are.
        </p>
        <p className="caution">
          Buildings on clay, drains, buried services and overhead lines: find them before the first hole, and
          let licensed people say what may stand near them.
        </p>
      </Details>
    </div>
  );
}

function Place() {
  const [lon, lat] = useApp((app) => app.centre);
  const epsg = useApp((app) => app.frame.epsg);
  const turnDeg = useApp((app) => (app.frame.convergenceRad * 180) / Math.PI);
  return (
    <p>
      Near {Math.abs(lat).toFixed(2)}° {lat < 0 ? 'south' : 'north'}, {Math.abs(lon).toFixed(2)}°{' '}
      {lon < 0 ? 'west' : 'east'}. Maps are in UTM (EPSG {epsg}); its grid north lies{' '}
      {Math.abs(turnDeg).toFixed(2)}° {turnDeg < 0 ? 'west' : 'east'} of true north, which is taken into
      account.
    </p>
  );
}
