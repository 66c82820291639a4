import { useApp } from '../../state/store.ts';

/** Says so where the map shows another year than that of a day (YYYY-MM-DD), and leads there. */
export function ShownYear({ date }: { date: string }) {
  const baseYear = useApp((app) => app.document.site.baseYear);
  const year = useApp((app) => app.year);
  const show = useApp((app) => app.show);
  const dayYear = Math.max(0, Number(date.slice(0, 4)) - baseYear);
  if (year === dayYear) return null;
  return (
    <p className="small soft">
      The map shows year {year}.{' '}
      <button type="button" className="link" onClick={() => show({ year: dayYear })}>
        Show year {dayYear}, as it stands on that day
      </button>
    </p>
  );
}
