import { LAST_SHOWN_YEAR } from '../../state/play-years.ts';
import { Details } from '../parts/panel-head.tsx';
import { bandWords, type Curve, valueWords } from './year-curves.ts';

const EVERY_FIFTH = Array.from({ length: LAST_SHOWN_YEAR / 5 + 1 }, (_, fifth) => 5 * fifth);

/** The curves as a table, every fifth year. */
export function YearsTable({ curves }: { readonly curves: readonly Curve[] }) {
  return (
    <Details title="The same as a table">
      <table>
        <caption className="unseen">
          The curves every fifth year; under a figure what it is as things grow slowly and fast
        </caption>
        <thead>
          <tr>
            <th scope="col">Year</th>
            {curves.map(({ id, label }) => (
              <th key={id} scope="col" className="number">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {EVERY_FIFTH.map((year) => (
            <tr key={year}>
              <th scope="row">{year}</th>
              {curves.map((curve) => (
                <td key={curve.id} className="number">
                  {valueWords(curve, year)}
                  <small>{bandWords(curve, year)}</small>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Details>
  );
}
