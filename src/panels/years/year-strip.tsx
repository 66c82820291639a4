import { Diary } from './diary.tsx';
import { MonthsRow } from './months-row.tsx';
import './years.css';

export function YearStrip() {
  return (
    <section className="years" aria-label="Year and month">
      <Diary />
      <MonthsRow />
    </section>
  );
}
