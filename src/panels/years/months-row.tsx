import { growingMonths } from '../../state/growing-months.ts';
import type { Period } from '../../state/model.ts';
import { useApp } from '../../state/store.ts';
import { MONTHS } from '../../units/months.ts';

/** The months, and the two spans of them that matter. Months of the chosen span carry its wash. */
export function MonthsRow() {
  const period = useApp((app) => app.period);
  const site = useApp((app) => app.document.site);
  const latDeg = useApp((app) => app.centre[1]);
  const show = useApp((app) => app.show);
  const growing = growingMonths(site, latDeg);
  const within = (month: number) => period === 'year' || (period === 'season' && growing.has(month));
  const choose = (chosen: Period) => show({ period: chosen });
  return (
    <div className="months-side">
      <div className="caption">
        <span>Months</span>
        <div className="spans">
          <button type="button" aria-pressed={period === 'season'} onClick={() => choose('season')}>
            growing season
          </button>
          <button type="button" aria-pressed={period === 'year'} onClick={() => choose('year')}>
            whole year
          </button>
        </div>
      </div>
      <div className="months">
        {MONTHS.map((name, month) => (
          <button
            key={name}
            type="button"
            aria-label={name}
            aria-pressed={period === month}
            className={within(month) ? 'within' : undefined}
            onClick={() => choose(month)}
          >
            {name[0]}
          </button>
        ))}
      </div>
    </div>
  );
}
