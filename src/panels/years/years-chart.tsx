import type { PatchOutlook } from '../../state/model.ts';
import { LAST_SHOWN_YEAR } from '../../state/play-years.ts';
import { useApp } from '../../state/store.ts';
import { listInWords } from '../../units/list-in-words.ts';
import type { CropLook } from '../../years/years-look-types.ts';
import { bandPath, curvePath, steps } from './curve-path.ts';
import { bandWords, type Curve, valueWords } from './year-curves.ts';
import { YearNumbers } from './year-numbers.tsx';
import { YearRange } from './year-range.tsx';

const WIDTH = 800;
const HEIGHT = 100;
const TOP = 6;
const BOX = { width: WIDTH, top: TOP, base: HEIGHT, lastYear: LAST_SHOWN_YEAR };
const EVERY_FIFTH = Array.from({ length: LAST_SHOWN_YEAR / 5 + 1 }, (_, fifth) => 5 * fifth);
/** Names closer than this would lie over each other. */
const YEARS_APART = 6;

/** The curves one under the other on one ruled axis of years, each with its scale, its band and its value in the chosen year. */
export function YearsChart(props: {
  readonly curves: readonly Curve[];
  readonly patches: readonly PatchOutlook[] | null;
  readonly crops: CropLook | null;
}) {
  const year = useApp((app) => app.year);
  // The year that is shown makes the patches' light of now old, and not that of the years.
  const stale = useApp((app) => app.yearsLook.stale);
  return (
    <div className="years-chart">
      {props.curves.map((curve) => (
        <div key={curve.id} className="year-row">
          <p className="year-row-words">
            <span>{curve.label}</span> <b>{valueWords(curve, year)}</b>{' '}
            <small>{bandWords(curve, year)}</small>
          </p>
          <p className="year-row-scale" aria-hidden="true">
            <span>{curve.of === 0 ? '' : (curve.of ?? '100 %')}</span>
            <span>0</span>
          </p>
          <Plot
            curve={curve}
            notes={
              curve.id === 'light' ? turns(props.patches) : curve.id === 'crops' ? firsts(props.crops) : []
            }
            old={stale}
          />
        </div>
      ))}
      <div className="year-axis">
        <YearNumbers />
      </div>
      <div className="year-hand">
        <div>
          <i style={{ left: `${(year / LAST_SHOWN_YEAR) * 100}%` }} />
        </div>
        <YearRange />
      </div>
    </div>
  );
}

function Plot({ curve, notes, old }: { curve: Curve; notes: readonly Note[]; old: boolean }) {
  const line = curve.stepped ? steps(curve) : curve;
  const x = (year: number) => (year / LAST_SHOWN_YEAR) * WIDTH;
  return (
    <div className="year-plot" style={{ opacity: old ? 0.45 : 1 }}>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
        {EVERY_FIFTH.map((year) => (
          <line key={year} className="rule" x1={x(year)} x2={x(year)} y1={TOP} y2={HEIGHT} />
        ))}
        <line className="rule" x1="0" x2={WIDTH} y1={(TOP + HEIGHT) / 2} y2={(TOP + HEIGHT) / 2} />
        <line className="base" x1="0" x2={WIDTH} y1={HEIGHT} y2={HEIGHT} />
        {curve.band ? (
          <path className={`wash ${curve.id}`} d={bandPath(curve.band, curve.stepped, BOX)} />
        ) : null}
        <path className={`line ${curve.id}`} d={curvePath(line.years, line.shares, BOX)} />
      </svg>
      {notes.map(({ year, words }) => (
        <span
          key={`${year} ${words}`}
          className={year > 0.7 * LAST_SHOWN_YEAR ? 'year-note before' : 'year-note'}
          style={{ left: `${(year / LAST_SHOWN_YEAR) * 100}%` }}
        >
          <i />
          {words ? <span>{words}</span> : null}
        </span>
      ))}
    </div>
  );
}

/** A mark at a year of a curve, and what it is of; without words where the mark says enough or those before it tell. */
interface Note {
  readonly year: number;
  readonly words: string;
}

/** When patches turn dark: those that come soon after another are told with it. */
function turns(patches: readonly PatchOutlook[] | null): Note[] {
  const turning = (patches ?? [])
    .flatMap(({ name, years }) =>
      years && years.darkFromYear !== null ? [{ year: years.darkFromYear, name }] : [],
    )
    .sort((a, b) => a.year - b.year);
  const told: { first: number; last: number; names: string[] }[] = [];
  for (const { year, name } of turning) {
    const group = told.at(-1);
    if (group && year - group.first < YEARS_APART) {
      group.names.push(name);
      group.last = year;
    } else told.push({ first: year, last: year, names: [name] });
  }
  // Beside the last mark of a group, so that the words lie over none.
  const words = new Map(told.map(({ last, names }) => [last, listInWords(names, 2)]));
  return [...new Set(turning.map(({ year }) => year))].map((year) => ({
    year,
    words: words.get(year) ?? '',
  }));
}

/** When the first tree of each species bears; which they are is told beside. */
const firsts = (crops: CropLook | null): Note[] => {
  const years = (crops?.species ?? []).flatMap(({ firstYear }) => firstYear.usual ?? []);
  return [...new Set(years)].map((year) => ({ year, words: '' }));
};
