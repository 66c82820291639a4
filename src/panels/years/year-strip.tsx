import { useApp } from '../../state/store.ts';
import { Diary } from './diary.tsx';
import { MonthsRow } from './months-row.tsx';
import { YearCaption } from './year-caption.tsx';
import { YearsLookPart } from './years-look-part.tsx';
import './years.css';
import './years-look.css';

/** The years and the months along the bottom: the strip with its two curves, or the years in one look. */
export function YearStrip() {
  const open = useApp((app) => app.yearsOpen);
  return (
    <section className={open ? 'years open' : 'years'} aria-label="Year and month">
      <YearCaption />
      {open ? (
        <>
          <MonthsRow />
          <YearsLookPart />
        </>
      ) : (
        <>
          <Diary />
          <MonthsRow />
        </>
      )}
    </section>
  );
}
