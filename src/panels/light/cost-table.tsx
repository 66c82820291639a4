import { formatHours } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';

const LINES = 6;

/** Which trees and belts cost the patches most sun. */
export function CostTable() {
  const costs = useApp((app) => app.costs);
  const select = useApp((app) => app.select);
  if (!costs.result || costs.result.length === 0) return null;
  return (
    <table>
      <caption>What costs the patches most{costs.stale ? ' (before the last change)' : ''}</caption>
      <thead>
        <tr>
          <th scope="col">Tree or belt</th>
          <th scope="col" className="number">
            Sun a day
          </th>
        </tr>
      </thead>
      <tbody>
        {costs.result.slice(0, LINES).map((cost) => (
          <tr key={cost.id}>
            <td>
              <button type="button" className="link" onClick={() => select(cost.id)}>
                {cost.label}
              </button>
            </td>
            <td className="number">{formatHours(cost.sunHoursADay)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
