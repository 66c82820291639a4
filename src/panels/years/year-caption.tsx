import { followsYears } from '../../state/followed-year.ts';
import { useApp } from '../../state/store.ts';
import { PlayButtons } from './play-buttons.tsx';
import { YEARS_LOOK_ID } from './years-look-id.ts';

/** The chosen year, the buttons that go through the years, and the one that opens them in one look. */
export function YearCaption() {
  const year = useApp((app) => app.year);
  const baseYear = useApp((app) => app.document.site.baseYear);
  const open = useApp((app) => app.yearsOpen);
  const show = useApp((app) => app.show);
  const waiting = useApp((app) => app.playing && app.yearsLook.status === 'computing');
  const progress = useApp((app) => app.yearsLook.progress);
  const left = useApp(
    (app) =>
      app.playing &&
      app.picture !== 'plain' &&
      app.picture !== 'slope' &&
      app.picture !== 'cold-air' &&
      !followsYears(app),
  );
  return (
    <div className="caption">
      <span className="year-words">
        <span className="wide-words">Years after planting</span>
        <b>
          year {year} · {baseYear + year}
        </b>
      </span>
      <PlayButtons />
      {waiting ? (
        <span className="play-note">following the years: {Math.round(100 * progress)} %</span>
      ) : left ? (
        <span className="play-note">This map is drawn anew when the years stop.</span>
      ) : null}
      <button
        type="button"
        className="open-years"
        aria-expanded={open}
        aria-controls={open ? YEARS_LOOK_ID : undefined}
        onClick={() => show({ yearsOpen: !open })}
      >
        <span className="wide-words">{open ? 'Fold the years' : 'The years in one look'}</span>
        <span className="narrow-words">{open ? 'Fold' : 'All years'}</span>
      </button>
    </div>
  );
}
