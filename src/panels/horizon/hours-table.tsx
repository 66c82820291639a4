import { HOURS_EXPLAINED, type LostRow, lostTable } from '../../sheets/horizon-hours.ts';
import type { HorizonInput, HorizonPeriod } from '../../sheets/horizon-input.ts';
import { headOf, hoursFigure } from '../../sheets/horizon-table.ts';

const PERIODS: readonly HorizonPeriod[] = ['month', 'season', 'year'];
/** More rows than this are kept behind a word. */
const ROWS = 10;

/** What takes sun from the spot, most in the chosen period first; a name points its thing out on the strip. */
export function HoursTable(props: {
  readonly input: HorizonInput;
  readonly period: HorizonPeriod;
  readonly chosen: number | null;
  readonly onChoose: (thing: number | null) => void;
}) {
  const { input, period, chosen, onChoose } = props;
  const { takers, together, got, open } = lostTable(input, period);
  const row = (each: LostRow, className?: string) => (
    <tr key={`${each.thing} ${each.label}`} className={className}>
      <th scope="row">
        {each.thing === null ? (
          each.label
        ) : (
          <button
            type="button"
            className="link"
            aria-pressed={each.thing === chosen}
            onClick={() => onChoose(each.thing === chosen ? null : each.thing)}
          >
            {each.label}
          </button>
        )}
      </th>
      {PERIODS.map((which) => (
        <td key={which} className={which === period ? 'number chosen' : 'number'}>
          {hoursFigure(each.hours[which])}
        </td>
      ))}
    </tr>
  );
  const head = (
    <thead>
      <tr>
        <th scope="col">What takes sun</th>
        {PERIODS.map((which) => (
          <th key={which} scope="col" className="number">
            {headOf(input, which)}
          </th>
        ))}
      </tr>
    </thead>
  );
  return (
    <div className="horizon-hours">
      <table>
        <caption>Hours of sun that each thing takes here</caption>
        {head}
        <tbody>
          {takers.slice(0, ROWS).map((each) => row(each))}
          {row(together)}
          {row(got, 'sum')}
          {row(open)}
        </tbody>
      </table>
      {takers.length > ROWS ? (
        <details>
          <summary>{takers.length - ROWS} more that take less</summary>
          <table>
            {head}
            <tbody>{takers.slice(ROWS).map((each) => row(each))}</tbody>
          </table>
        </details>
      ) : null}
      <p className="small soft">{HOURS_EXPLAINED}</p>
    </div>
  );
}
